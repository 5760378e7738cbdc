/** Whole obstacles held to one another and to the walls, as rigid bodies. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { isConsistent, wholeObstacles } from '../../../src/core/course/rigid.ts';
import { type LayoutOutcome, solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { compose, type Pose } from '../../../src/core/plane/pose.ts';
import { ARENA, box, fan, held, layout, run, withFixed } from './scene.ts';

const P1 = 'run-1/pole-1';
const NONE: ReadonlySet<string> = new Set();

function laid(answer: LayoutOutcome): Layout {
  if (answer.kind !== 'settled') throw new Error(answer.says);
  return answer.layout;
}
function worst(of: Layout): number {
  const { problem } = layoutProblem(of, ARENA);
  const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const rows = problem.constraints.flatMap((each) =>
    each.residuals(each.bodies.map((id) => poses.get(id) ?? { x: 0, y: 0, angle: 0 })),
  );
  return rows.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
}
function moved(pose: Pose, x: number, y: number, angle = 0): Pose {
  return { x: pose.x + x, y: pose.y + y, angle: pose.angle + angle };
}

describe('an obstacle is one body', () => {
  test('unless a piece of it is wished, its pieces are tied by the layout, or its measures do not hold', () => {
    const bent = {
      ...fan(),
      pieces: fan().pieces.map((piece, i) => (i === 0 ? { ...piece, pose: moved(piece.pose, 0.1, 0) } : piece)),
    };
    const tie = held('far', 'apart', [P1, 'run-1/pole-4'], { hold: 3 });
    const of = layout([run(), bent, box()], [tie]);
    expect([...wholeObstacles(of, NONE)]).toEqual(['box-1']);
    expect([...wholeObstacles(layout([run(), box()]), new Set(['box-1']))]).toEqual(['run-1']);
    expect(isConsistent(bent)).toBe(false);
    expect(isConsistent(run())).toBe(true);
  });

  test('however loose it is inside: its gaps let go, it is still pulled as it lies', () => {
    const loose = { ...run(), constraints: [] };
    const link = held('link', 'apart', [P1, 'box-1/west'], { hold: 20 });
    const start = laid(solveLayout(layout([loose, box()], [link]), ARENA, new Map()));
    const west = start.obstacles[1];
    if (west === undefined) throw new Error('no box');
    const after = laid(solveLayout(start, ARENA, new Map([['box-1', moved(west.pose, 5, 3)]])));
    expect(after.obstacles[0]?.pieces).toBe(start.obstacles[0]?.pieces);
    expect(after.obstacles[0]?.pose).not.toEqual(start.obstacles[0]?.pose);
    expect(worst(after)).toBeLessThan(1e-9);
  });

  test('with three unknowns: its tie to a wall has the slopes that central differences agree with', () => {
    const shift = fc.double({ min: -1, max: 1, noNaN: true });
    const of = layout([fan()], [held('off', 'off-wall', [['fan-1/pole-3', 0.2], 'north'], { hold: 2 })]);
    const { problem } = layoutProblem(of, ARENA, wholeObstacles(of, NONE));
    const [tie, ...more] = problem.constraints;
    expect(more).toEqual([]);
    const north = problem.bodies.find(({ id }) => id === 'wall north')?.pose ?? { x: 0, y: 0, angle: 0 };
    fc.assert(
      fc.property(shift, shift, shift, (x, y, angle) => {
        const pose = moved(fan().pose, x, y, angle);
        const row = (by: Partial<Pose>) => {
          const [x2 = 0, y2 = 0, a2 = 0] = [by.x, by.y, by.angle];
          return tie?.residuals([moved(pose, x2, y2, a2), north])[0];
        };
        const slopes = row({})?.gradient[0] ?? [9, 9, 9];
        (['x', 'y', 'angle'] as const).forEach((axis, k) => {
          const step = 1e-5;
          const there = (row({ [axis]: step })?.value ?? 9) - (row({ [axis]: -step })?.value ?? -9);
          expect(Math.abs(there / (2 * step) - (slopes[k] ?? 9))).toBeLessThan(1e-5);
        });
      }),
    );
  });
});

describe('obstacles tied to one another', () => {
  const link = held(
    'link',
    'gap',
    [
      ['run-1/pole-4', 0.5],
      ['fan-1/pole-1', 0.5],
    ],
    { hold: 6, side: -1 },
  );
  const level = held('level', 'ends-level', [
    ['run-1/pole-4', 0.5],
    ['fan-1/pole-1', 0.5],
  ]);
  const start = laid(solveLayout(layout([run(), fan(), box()], [link, level]), ARENA, new Map()));
  const pose = (of: Layout, i: number): Pose => of.obstacles[i]?.pose ?? { x: 0, y: 0, angle: 0 };

  test('are brought to hold with their pieces in their places to the bit', () => {
    expect(worst(start)).toBeLessThan(1e-9);
    expect(start.obstacles.map(({ pieces }) => pieces)).toEqual([run().pieces, fan().pieces, box().pieces]);
  });

  test('go along when one of them is carried, and leave the others the same objects', () => {
    const wish = moved(pose(start, 1), 3, -2, 0.4);
    const after = laid(solveLayout(start, ARENA, new Map([['fan-1', wish]])));
    expect(worst(after)).toBeLessThan(1e-9);
    expect(pose(after, 1)).toEqual(wish);
    expect(after.obstacles[0]?.pieces).toBe(start.obstacles[0]?.pieces);
    expect(after.obstacles[2]).toBe(start.obstacles[2]);
  });

  test('keep the measures of both when a single pole of one is pulled', () => {
    const fourth = placedObstacle(start.obstacles[0] ?? run()).pieces[3];
    if (fourth === undefined) throw new Error('no fourth pole');
    const after = laid(solveLayout(start, ARENA, new Map([['run-1/pole-4', moved(fourth.pose, 1, 0.5, 0.1)]])));
    expect(worst(after)).toBeLessThan(1e-9);
    expect(after.obstacles[1]?.pieces).toBe(start.obstacles[1]?.pieces);
  });

  test('stay where they are when one with a fixed pole is what is carried', () => {
    const nailed = layout([withFixed(run(), 'pole-1'), ...start.obstacles.slice(1)]);
    const after = solveLayout(nailed, ARENA, new Map([['run-1', moved(run().pose, 4, 0)]]));
    expect(laid(after)).toBe(nailed);
  });
});

test('an obstacle kept at least so far from two walls goes with the hand and stops there', () => {
  const clear = [
    held('s', 'clear-of-wall', [P1, 'south'], { hold: 2 }),
    held('w', 'clear-of-wall', [P1, 'west'], { hold: 3 }),
  ];
  const start = layout([run()], clear);
  const at = (x: number, y: number) => {
    const after = laid(solveLayout(start, ARENA, new Map([['run-1', { x, y, angle: 0 }]])));
    const first = after.obstacles[0];
    if (first === undefined) throw new Error('no run');
    expect(worst(after)).toBeLessThan(1e-9);
    return compose(first.pose, first.pieces[0]?.pose ?? first.pose);
  };
  // Free of both, the target is reached to the bit; beyond them the near end stays 2 m off, the pole's face 3 m.
  expect(at(24, 15).y).toBeCloseTo(15, 12);
  expect(at(24, 1).y).toBeCloseTo(2 + 3.6576 / 2, 6);
  expect(at(2, 15).x).toBeCloseTo(3 + 0.1016 / 2, 6);
});

test('what cannot be met whole is met by its pieces where its own measures let it', () => {
  const loose = { ...run(), constraints: run().constraints.filter(({ id }) => !id.startsWith('parallel')) };
  const of = layout(
    [loose],
    [
      held('a', 'angle-to-wall', [P1, 'south'], { hold: 1.5 }),
      held('b', 'angle-to-wall', ['run-1/pole-4', 'south'], { hold: 1.4 }),
    ],
  );
  const after = laid(solveLayout(of, ARENA, new Map()));
  expect(worst(after)).toBeLessThan(1e-9);
  expect(after.obstacles[0]?.pieces).not.toBe(loose.pieces);
});
