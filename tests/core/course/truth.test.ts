/** What is said to be kept is so on the ground, and what is said to be impossible is. `npm run bench -- truth` does more. */
import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { canBeMet, smallestUnmet } from '../../bench/truth/brute-force.ts';
import { FIELD, layoutOf, looseNet, single, tapeCosines, tapedOnGround } from '../../bench/truth/nets.ts';
import { tangle } from '../../bench/truth/tangles.ts';

describe('a gap that is called kept', () => {
  test.each(Array.from({ length: 24 }, (_, seed) => seed))('measures so by the tape, net %i, dragged 20 ft', (seed) => {
    const net = looseNet(seed);
    const [dragged] = net.obstacles.flatMap((each) => placedObstacle(each).pieces);
    if (dragged === undefined) throw new Error('a net without poles');
    for (let feet = 1; feet <= 20; feet += 1) {
      const heading = seed * 0.9;
      const to = {
        ...dragged.pose,
        x: dragged.pose.x + feet * FOOT * Math.cos(heading),
        y: dragged.pose.y + feet * FOOT * Math.sin(heading),
      };
      const outcome = solveLayout(net, FIELD, new Map([[dragged.key, to]]));
      if (outcome.kind !== 'settled') continue;
      for (const gap of net.constraints) {
        expect(Math.abs(tapedOnGround(outcome.layout, gap) - (gap.hold ?? 0))).toBeLessThan(1e-6);
        expect(Math.min(...tapeCosines(outcome.layout, gap))).toBeGreaterThan(0.2499);
      }
    }
  });

  test('slips no further than a tape can lie: a pole dragged along its neighbour stops beside it', () => {
    const poles = [
      { ...single('still', { x: 60, y: 60, angle: 0 }) },
      single('free', { x: 60, y: 60 + 2 * FOOT + 0.1016, angle: 0 }),
    ];
    const still = poles[0];
    if (still === undefined) throw new Error('no pole');
    const fixed = { ...still, pieces: still.pieces.map((piece) => ({ ...piece, fixed: true as const })) };
    const grips = [{ piece: 'still/only' }, { piece: 'free/only' }];
    const net = layoutOf(
      [fixed, ...poles.slice(1)],
      [
        { id: 'gap', kind: 'gap', grips, hold: 2 * FOOT, side: 1 },
        { id: 'parallel', kind: 'parallel', grips },
      ],
    );
    const outcome = solveLayout(net, FIELD, new Map([['free/only', { x: 66, y: 60.71, angle: 0 }]]));
    if (outcome.kind !== 'settled') throw new Error(outcome.says);
    const [gap] = net.constraints;
    if (gap === undefined) throw new Error('no gap');
    expect(tapedOnGround(outcome.layout, gap)).toBeCloseTo(2 * FOOT, 6);
    expect(outcome.layout.obstacles[1]?.pose.x).toBeLessThan(66);
    expect(tapeCosines(outcome.layout, gap)[0]).toBeCloseTo(0.25, 6);
  });
});

describe('a set that is said to be impossible', () => {
  test.each([0, 1, 2, 3, 17, 24, 38, 54, 99, 104])('is so by brute force, and none is smaller: tangle %i', (seed) => {
    const layout = tangle(seed);
    const outcome = solveLayout(layout, FIELD, new Map());
    expect(outcome.kind).not.toBe('lost');
    if (outcome.kind !== 'conflict') return;
    const { problem } = layoutProblem(layout, FIELD);
    const sets = outcome.conflicts.map(({ members }) => new Set(members.map(({ key }) => key)));
    for (const set of sets) {
      expect(
        canBeMet(
          problem,
          problem.constraints.filter(({ id }) => set.has(id)),
          seed,
        ),
      ).toBe(false);
    }
    const size = Math.min(...sets.map((set) => set.size));
    expect(smallestUnmet(problem, size, seed)).toBe(size);
  });
});
