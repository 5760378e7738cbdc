import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ObservationKind } from '../../../src/core/constraints/constraint.ts';
import { observed } from '../../../src/core/setout/observe.ts';
import type { Observable } from '../../../src/core/setout/setout.ts';

const PAIRS: readonly (readonly [ObservationKind, Partial<Observable>])[] = [
  ['gap', {}],
  ['between', {}],
  ['beside', {}],
  ['clear', {}],
  ['ahead', {}],
  ['level', {}],
  ['in-line', {}],
  ['square', {}],
  ['against', {}],
  ['off-wall', {}],
  ['along-wall', { from: 3, runs: -1 }],
  ['from-rail', { from: 7 }],
];
const STEP = 1e-6;
const POSE = fc.record({
  x: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  y: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
  angle: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
});

describe.each(PAIRS)('%s', (kind, more) => {
  const isWall = kind.includes('wall') || kind.includes('rail');
  const of = {
    kind,
    grips: [{ piece: 'a', at: 0.8 }, isWall ? { wall: 'south' } : { piece: 'b', at: 0.3 }],
    side: 1,
    ...more,
  } as Observable;
  const value = (nudges: readonly [number, number, number][]) => {
    const [a = [0, 0, 0], b = [0, 0, 0]] = nudges;
    const second = isWall
      ? { pose: { x: 20, y: 0, angle: 0 }, length: 0, width: 0, at: 0.5 }
      : {
          pose: { x: 10 + b[0], y: 7 + b[1], angle: (kind === 'square' ? 1.9 : 0.35) + b[2] },
          length: 3,
          width: 0.1,
          at: 0.3,
        };
    const first = { pose: { x: 10.2 + a[0], y: 5 + a[1], angle: 0.3 + a[2] }, length: 3.6, width: 0.12, at: 0.8 };
    return observed(of, { gripped: [first, second], small: [kind === 'beside' || kind === 'clear', false] }, 40);
  };

  test('has the gradient that small moves of its pieces have', () => {
    fc.assert(
      fc.property(POSE, POSE, (a, b) => {
        const base: [number, number, number][] = [
          [a.x, a.y, a.angle],
          [b.x, b.y, b.angle],
        ];
        const { gradient } = value(base);
        for (const which of isWall ? [0] : [0, 1]) {
          for (const slot of [0, 1, 2]) {
            const moved = (by: number) =>
              base.map(
                (each, i) => each.map((v, j) => (i === which && j === slot ? v + by : v)) as [number, number, number],
              );
            const slope = (value(moved(STEP)).value - value(moved(-STEP)).value) / (2 * STEP);
            expect(Math.abs((gradient[which]?.[slot] ?? Number.NaN) - slope)).toBeLessThan(1e-5);
          }
        }
      }),
      { numRuns: 20 },
    );
  });
});
