/**
 * Source: planegcs 1.3.0, the constraint solver of an open CAD program. The same system is given to it and to ours; each
 * answer is judged by our equations and by a formula on its end points, since positions may differ where there is freedom.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Pose } from '../../src/core/plane/pose.ts';
import type { Problem } from '../../src/core/solve/problem.ts';
import { solve } from '../../src/core/solve/solve.ts';
import { chain, LENGTH, pole, THICKNESS, tie, worst } from '../core/solve/poles.ts';
import { drawnPole, type Pole, planegcs, pointOn, type Sketch } from './planegcs.ts';

/** A kind of ours and what planegcs calls the same; `hold` in our sense, metres or radians. */
interface Pair {
  readonly kind: string;
  readonly at?: number;
  readonly hold?: number;
  /** Where the second body stands at first, so that both seek the same side. */
  readonly second: Pose;
  write(sketch: Sketch, a: Pole, b: Pole): void;
}

const BESIDE: Pose = { x: 0.3, y: 2.2, angle: 0.2 };
const PAIRS: readonly Pair[] = [
  {
    kind: 'parallel',
    second: BESIDE,
    write: (s, a, b) => s.add({ type: 'parallel', l1_id: a.line, l2_id: b.line }),
  },
  {
    kind: 'square',
    second: { x: 0.5, y: 3, angle: 1.3 },
    write: (s, a, b) => s.add({ type: 'perpendicular_ll', l1_id: a.line, l2_id: b.line }),
  },
  {
    kind: 'angle-between',
    hold: 0.5,
    second: BESIDE,
    write: (s, a, b) => s.add({ type: 'l2l_angle_ll', l1_id: a.line, l2_id: b.line, angle: 0.5 }),
  },
  {
    kind: 'on-line',
    at: 0,
    second: { x: 4.2, y: 0.4, angle: 0.4 },
    write: (s, a, b) => s.add({ type: 'point_on_line_pl', p_id: b.from, l_id: a.line }),
  },
  {
    kind: 'in-line',
    at: 0,
    second: { x: 4.2, y: 0.4, angle: 0.1 },
    write: (s, a, b) => {
      s.add({ type: 'parallel', l1_id: a.line, l2_id: b.line });
      s.add({ type: 'point_on_line_pl', p_id: b.from, l_id: a.line });
    },
  },
  {
    kind: 'ends-touching',
    at: 1,
    second: { x: 0.6, y: 1.9, angle: -1 },
    write: (s, a, b) => s.add({ type: 'p2p_coincident', p1_id: a.to, p2_id: b.to }),
  },
  {
    kind: 'apart',
    at: 0,
    hold: 2.5,
    second: BESIDE,
    write: (s, a, b) => s.add({ type: 'p2p_distance', p1_id: a.from, p2_id: b.from, distance: 2.5 + THICKNESS }),
  },
  {
    kind: 'ends-level',
    at: 0,
    second: BESIDE,
    // A parallelogram with square corners has its ends level.
    write: (s, a, b) => {
      s.add({ type: 'parallel', l1_id: a.line, l2_id: b.line });
      s.add({ type: 'perpendicular_pppp', l1p1_id: a.from, l1p2_id: a.to, l2p1_id: a.from, l2p2_id: b.from });
    },
  },
  {
    kind: 'on-arc',
    at: 1,
    hold: 3,
    second: { x: 3, y: 3, angle: 0.3 },
    write: (s, _, b) => {
      const centre = s.add({ type: 'point', x: 0, y: 0, fixed: true });
      s.add({ type: 'p2p_distance', p1_id: centre, p2_id: b.to, distance: 3 });
    },
  },
  {
    kind: 'touching',
    at: 1,
    second: { x: 2.2, y: -0.4, angle: 1.4 },
    write: (s, a, b) => s.add({ type: 'p2l_distance', p_id: a.to, l_id: b.line, distance: THICKNESS / 2 }),
  },
];

/** The pole whose end points planegcs has found. */
function poseBetween(from: { x: number; y: number }, to: { x: number; y: number }): Pose {
  return {
    x: (from.x + to.x) / 2,
    y: (from.y + to.y) / 2,
    angle: Math.atan2(to.y - from.y, to.x - from.x),
  };
}

describe.each(PAIRS.map((pair) => [pair.kind, pair] as const))('%s', (kind, { at, hold, second, write }) => {
  const bodies = [pole('a', { x: 0, y: 0, angle: 0 }, { weight: Number.POSITIVE_INFINITY }), pole('b', second)];
  const between = { ...(at === undefined ? {} : { at }), ...(hold === undefined ? {} : { hold }) };
  const problem: Problem = { bodies, constraints: [tie(kind, ['a', 'b'], between)] };

  test('holds where ours puts the poles, to 1e-9', () => {
    const outcome = solve(problem);
    if (outcome.outcome !== 'met') throw new Error(outcome.outcome);
    expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);
  });

  test('holds by our equations where planegcs puts them', async () => {
    const drawn: Pole[] = [];
    const oracle = await planegcs((sketch) => {
      for (const { pose, weight } of bodies) {
        drawn.push(drawnPole(sketch, pose, { length: LENGTH, fixed: weight === Number.POSITIVE_INFINITY }));
      }
      const [a, b] = drawn;
      if (a !== undefined && b !== undefined) write(sketch, a, b);
    });
    expect(oracle.solve()).toBe(true);
    const poses = drawn.map(({ from, to }) => poseBetween(oracle.point(from), oracle.point(to)));
    oracle.close();
    const there = new Map(bodies.map((body, i) => [body.id, poses[i] ?? body.pose]));
    expect(there.get('b')).not.toEqual(second);
    expect(worst(problem, there)).toBeLessThan(1e-8);
  });
});

test('mirrored: holds by our equations where planegcs puts the ends as images of each other', async () => {
  const bodies = [
    pole('a', { x: 1, y: 2, angle: 1 }),
    pole('b', { x: -1.4, y: 2.2, angle: 2.3 }),
    pole('line', { x: 0, y: -3, angle: Math.PI / 2 }, { weight: Number.POSITIVE_INFINITY }),
  ];
  const problem: Problem = { bodies, constraints: [tie('mirrored', ['a', 'b', 'line'])] };
  const outcome = solve(problem);
  if (outcome.outcome !== 'met') throw new Error(outcome.outcome);
  expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);
  const drawn: Pole[] = [];
  const oracle = await planegcs((sketch) => {
    for (const { pose, weight } of bodies) {
      drawn.push(drawnPole(sketch, pose, { length: LENGTH, fixed: weight === Number.POSITIVE_INFINITY }));
    }
    const [a, b, line] = drawn;
    if (a === undefined || b === undefined || line === undefined) return;
    sketch.add({ type: 'p2p_symmetric_ppl', p1_id: a.from, p2_id: b.from, l_id: line.line });
    sketch.add({ type: 'p2p_symmetric_ppl', p1_id: a.to, p2_id: b.to, l_id: line.line });
  });
  oracle.solve();
  const there = new Map(
    drawn.map(({ from, to }, i) => [bodies[i]?.id ?? '', poseBetween(oracle.point(from), oracle.point(to))] as const),
  );
  oracle.close();
  expect(worst(problem, there)).toBeLessThan(1e-8);
});

describe('a chain of poles, parallel and a given way off each other’s line', () => {
  const OFF = 1.8288;
  const AT = 2 / 3;
  const jitter = fc.double({ min: -0.2, max: 0.2, noNaN: true });
  const places = fc.array(fc.record({ x: jitter, y: jitter, angle: jitter }), { minLength: 2, maxLength: 7 });

  test('comes out with the same residuals from both, from anywhere near', async () => {
    await fc.assert(
      fc.asyncProperty(places, async (nudges) => {
        const names = nudges.map((_, i) => `p${i}`);
        const start = nudges.map(
          ({ x, y, angle }, i): Pose => (i === 0 ? { x: 0, y: 0, angle: 0 } : { x, y: i * OFF + y, angle }),
        );
        const problem: Problem = {
          bodies: names.map((id, i) =>
            pole(id, start[i] ?? { x: 0, y: 0, angle: 0 }, i === 0 ? { weight: Number.POSITIVE_INFINITY } : {}),
          ),
          constraints: names.slice(1).flatMap((id, i) => {
            const pair = [id, names[i] ?? ''];
            return [tie('parallel', pair), tie('beside', pair, { at: AT, hold: OFF - THICKNESS })];
          }),
        };
        const outcome = solve(problem);
        if (outcome.outcome !== 'met') throw new Error(outcome.outcome);
        expect(worst(problem, outcome.poses)).toBeLessThan(1e-9);

        const drawn: Pole[] = [];
        const oracle = await planegcs((sketch) => {
          start.forEach((pose, i) => {
            drawn.push(drawnPole(sketch, pose, { length: LENGTH, fixed: i === 0 }));
          });
          drawn.slice(1).forEach((each, i) => {
            const before = drawn[i] ?? each;
            const { x, y, angle } = start[i + 1] ?? { x: 0, y: 0, angle: 0 };
            const reach = (AT - 0.5) * LENGTH;
            const where = { x: x + reach * Math.cos(angle), y: y + reach * Math.sin(angle), fromEnd: AT * LENGTH };
            sketch.add({ type: 'parallel', l1_id: before.line, l2_id: each.line });
            const grip = pointOn(sketch, each, where);
            sketch.add({ type: 'p2l_distance', p_id: grip, l_id: before.line, distance: OFF });
          });
        });
        expect(oracle.solve()).toBe(true);
        const there = new Map(
          drawn.map(({ from, to }, i) => [`p${i}`, poseBetween(oracle.point(from), oracle.point(to))] as const),
        );
        oracle.close();
        expect(worst(problem, there)).toBeLessThan(1e-8);
      }),
      { numRuns: 25 },
    );
  });
});

test('a clash is a clash for both: two distances for one pair of ends', async () => {
  const scene = chain(2);
  const ends = [tie('apart', ['p0', 'p1'], { at: 0, hold: 1 }), tie('apart', ['p0', 'p1'], { at: 0, hold: 2 })];
  const outcome = solve({ bodies: scene.bodies, constraints: ends.map((each, i) => ({ ...each, id: `${i}` })) });
  expect(outcome).toEqual({ outcome: 'conflict', conflicts: [['0', '1']] });
  const oracle = await planegcs((sketch) => {
    const [a, b] = scene.bodies.map(({ pose }, i) => drawnPole(sketch, pose, { length: LENGTH, fixed: i === 0 }));
    if (a === undefined || b === undefined) return;
    for (const distance of [1 + THICKNESS, 2 + THICKNESS]) {
      sketch.add({ type: 'p2p_distance', p1_id: a.from, p2_id: b.from, distance });
    }
  });
  expect(oracle.solve()).toBe(false);
  oracle.close();
});
