/**
 * A point that two tapes fix, against the handbook formula rms = σ√2/sin γ, with γ the angle at which the tapes meet (any surveying
 * handbook: intersection by two distances). Expected values: shared vectors of the project, worked out from that formula.
 */
import { describe, expect, test } from 'vitest';
import type { GrippedPose } from '../../src/core/constraints/constraint.ts';
import { observed } from '../../src/core/setout/observe.ts';
import { type LinearObservation, NOTHING_LAID, ownVariance, solved } from '../../src/core/setout/plan/placement.ts';
import { rightAngleError, sag, triangleUnit, USUAL_TAPE } from '../../src/core/setout/tape-errors.ts';

const SIGMA = 0.01;
const [A, B] = [
  { x: 0, y: 0 },
  { x: 10, y: 0 },
];

/** Two tapes of equal error from (0, 0) and (10, 0). */
const ROWS = [
  { at: [5, 5], tapes: [7.0711, 7.0711], degrees: 90, x: 0.01, y: 0.01, rms: 0.014142 },
  { at: [5, 2], tapes: [5.3852, 5.3852], degrees: 136.397, x: 0.007616, y: 0.019039, rms: 0.020506 },
  { at: [5, 1], tapes: [5.099, 5.099], degrees: 157.38, x: 0.007211, y: 0.036056, rms: 0.03677 },
  { at: [5, 10], tapes: [11.1803, 11.1803], degrees: 53.13, x: 0.015811, y: 0.007906, rms: 0.017678 },
  { at: [0, 10], tapes: [10, 14.1421], degrees: 45, x: 0.017321, y: 0.01, rms: 0.02 },
  { at: [15, 5], tapes: [15.8114, 7.0711], degrees: 26.565, x: 0.017321, y: 0.026458, rms: 0.031623 },
] as const;

function spot({ x, y }: { readonly x: number; readonly y: number }): GrippedPose {
  return { pose: { x, y, angle: 0 }, length: 0, width: 0, at: 0.5 };
}

function tape(from: { readonly x: number; readonly y: number }, to: { readonly x: number; readonly y: number }) {
  const { value, gradient } = observed(
    { kind: 'between', grips: [{ piece: 'a' }, { piece: 'b' }], side: 1 },
    { gripped: [spot(from), spot(to)], small: [true, true] },
  );
  const [held = [0, 0, 0], own = [0, 0, 0]] = gradient;
  const linear: LinearObservation = { own, held, index: -1, sigma: SIGMA };
  return { value, linear };
}

const EYE: LinearObservation = { own: [0, 0, 1], held: [0, 0, 0], index: -1, sigma: 1 };

describe('a point fixed by two tapes', () => {
  test.each(ROWS)('at $at, where they meet at $degrees°', ({ at, tapes, degrees, x, y, rms }) => {
    const point = { x: at[0], y: at[1] };
    const [first, second] = [tape(A, point), tape(B, point)];
    expect(first.value).toBeCloseTo(tapes[0], 4);
    expect(second.value).toBeCloseTo(tapes[1], 4);
    const by = solved(NOTHING_LAID, [first.linear, second.linear, EYE]);
    if (by === undefined) throw new Error('the tapes fix the point');
    const [xx, yy] = [ownVariance(by, [1, 0, 0]), ownVariance(by, [0, 1, 0])];
    expect(Math.abs(Math.sqrt(xx) - x)).toBeLessThan(2e-6);
    expect(Math.abs(Math.sqrt(yy) - y)).toBeLessThan(2e-6);
    expect(Math.abs(Math.sqrt(xx + yy) - rms)).toBeLessThan(2e-6);
    expect((SIGMA * Math.SQRT2) / Math.sin((degrees * Math.PI) / 180)).toBeCloseTo(rms, 5);
  });
});

describe('3 : 4 : 5', () => {
  const crew = { people: 2, tapes: 1, tape: 30, marked: 'm', rightAngle: 'three-four-five' } as const;

  test('is the largest that poles and tape allow: 6 : 8 : 10 ft on poles of 8 ft and more', () => {
    expect(triangleUnit(8, 12, 100)).toBeCloseTo(8 / 3, 12);
    expect(triangleUnit(6, 8, 100)).toBe(2);
    expect(triangleUnit(6, 8, 5)).toBe(1);
  });

  test('is as sure as the law of cosines says: sides built with errors have that angle', () => {
    const unit = 0.6;
    const side = Math.hypot(USUAL_TAPE.read.value, USUAL_TAPE.holdTwo.value);
    const angle = (a: number, b: number, c: number): number => Math.acos((a * a + b * b - c * c) / (2 * a * b));
    const nudge = 1e-6;
    const [a, b, c] = [3 * unit, 4 * unit, 5 * unit];
    const slopes = [angle(a + nudge, b, c), angle(a, b + nudge, c), angle(a, b, c + nudge)].map(
      (turned) => (turned - Math.PI / 2) / nudge,
    );
    const expected = side * Math.hypot(...slopes);
    expect(rightAngleError(crew, unit)).toBeCloseTo(expected, 6);
  });
});

test('a tape that hangs free reads too much by w²L³/24P²: 50 m of 0.2 N/m at 50 N, 0.083 m (the formula worked by hand)', () => {
  const of = (value: number) => ({ value, source: '', grade: 'E' }) as const;
  expect(sag(50, { weight: of(0.2), pull: of(50) })).toBeCloseTo((0.04 * 125_000) / (24 * 2500), 9);
  expect(sag(50, { weight: of(0.2), pull: of(50) })).toBeCloseTo(0.0833, 4);
});
