/** Properties of every drag, on five hundred obstacles of all kinds and sizes. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Arena, Layout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { type LayoutOutcome, solveLayout } from '../../../src/core/course/solve-layout.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle, ObstacleKind } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { compose, normalizeAngle, type Pose } from '../../../src/core/plane/pose.ts';
import { anyValues } from '../obstacles/samples.ts';
import { equationCount } from './scene.ts';

const ARENA: Arena = {
  title: 'Larkhollow Fairground',
  length: 60,
  width: 30,
  entrance: { wall: 'west', at: 15, width: 4 },
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const place = fc.record({ x: between(5, 50), y: between(5, 25), angle: between(-3, 3) });
const pull = fc.record({ x: between(-1, 1), y: between(-1, 1), angle: between(-0.3, 0.3) });

function obstacles(kind: ObstacleKind): fc.Arbitrary<Obstacle> {
  return fc
    .tuple(anyValues(kind), place, fc.constantFrom<1 | -1>(1, -1))
    .map(([values, pose, side]) => buildObstacle(`${kind.id}-1`, kind.id, values, pose, side))
    .filter((built): built is Obstacle => !('why' in built) && built.pieces.length > 0);
}
function alone(obstacle: Obstacle): Layout {
  const ride = { start: { x: 2, y: 15, angle: 0 }, legs: [] };
  return { id: 'a', title: 'A', obstacles: [obstacle], constraints: [], ride };
}
function laid(answer: LayoutOutcome): Layout {
  if (answer.kind !== 'settled') throw new Error(answer.says);
  return answer.layout;
}
function poses(layout: Layout): ReadonlyMap<string, Pose> {
  return new Map(layout.obstacles.flatMap((each) => placedObstacle(each).pieces.map(({ key, pose }) => [key, pose])));
}
/** The largest residual of everything that the layout holds. */
function worst(layout: Layout): number {
  const { problem } = layoutProblem(layout, ARENA);
  const at = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const rows = problem.constraints.flatMap((each) =>
    each.residuals(each.bodies.map((id) => at.get(id) ?? { x: 0, y: 0, angle: 0 })),
  );
  return rows.reduce((most, { value }) => Math.max(most, Math.abs(value)), 0);
}
function apart(a: ReadonlyMap<string, Pose>, b: ReadonlyMap<string, Pose>): number {
  return Math.max(
    ...[...a].map(([key, pose]) => {
      const there = b.get(key);
      if (there === undefined) throw new Error(`no ${key}`);
      return Math.max(
        Math.hypot(pose.x - there.x, pose.y - there.y),
        Math.abs(normalizeAngle(pose.angle - there.angle)),
      );
    }),
  );
}
/** A target for one piece of the obstacle, some way off. */
function wished(obstacle: Obstacle, which: number, by: Pose): ReadonlyMap<string, Pose> {
  const piece = obstacle.pieces[which % obstacle.pieces.length];
  if (piece === undefined) throw new Error('an obstacle without pieces');
  const { x, y, angle } = compose(obstacle.pose, piece.pose);
  return new Map([[`${obstacle.id}/${piece.id}`, { x: x + by.x, y: y + by.y, angle: angle + by.angle }]]);
}

const RUNS = Math.ceil(500 / OBSTACLE_KINDS.length);

describe.each(OBSTACLE_KINDS.map((kind) => [kind.id, kind] as const))('a %s of any size', (_, kind) => {
  test('keeps its measures to 1e-9 m when one piece is dragged, the same bytes each time, and comes back exactly', () => {
    fc.assert(
      fc.property(obstacles(kind), fc.nat(), pull, (obstacle, which, by) => {
        const before = alone(obstacle);
        const wishes = wished(obstacle, which, by);
        const after = laid(solveLayout(before, ARENA, wishes));
        expect(worst(after)).toBeLessThan(1e-9);
        const copy: Layout = JSON.parse(JSON.stringify(before));
        expect(JSON.stringify(solveLayout(copy, ARENA, wishes))).toBe(
          JSON.stringify(solveLayout(before, ARENA, wishes)),
        );
        const home = wished(obstacle, which, { x: 0, y: 0, angle: 0 });
        expect(laid(solveLayout(before, ARENA, home))).toBe(before);
        // Step by step: from where the drag has ended, back to where it began.
        const back = laid(solveLayout(after, ARENA, home));
        const freedoms = placedObstacle(obstacle).pieces.length * 3 - equationCount(before, ARENA);
        if (freedoms === 3) expect(apart(poses(back), poses(before))).toBeLessThan(1e-6);
      }),
      { numRuns: RUNS },
    );
  });

  test('comes out the same to 1e-9 in whatever order its pieces and constraints are written', () => {
    fc.assert(
      fc.property(obstacles(kind), fc.nat(), pull, (obstacle, which, by) => {
        const wishes = wished(obstacle, which, by);
        const turned = {
          ...obstacle,
          pieces: obstacle.pieces.toReversed(),
          constraints: obstacle.constraints.toReversed(),
        };
        const here = poses(laid(solveLayout(alone(obstacle), ARENA, wishes)));
        const there = poses(laid(solveLayout(alone(turned), ARENA, wishes)));
        expect(apart(here, there)).toBeLessThan(1e-9);
      }),
      { numRuns: 12 },
    );
  });

  test('keeps a fixed piece to the bit, whatever is dragged and wherever to', () => {
    fc.assert(
      fc.property(obstacles(kind), fc.nat(), fc.nat(), pull, (obstacle, which, nail, by) => {
        const pieces = obstacle.pieces.map((piece, i) =>
          i === nail % obstacle.pieces.length ? { ...piece, fixed: true as const } : piece,
        );
        const held = { ...obstacle, pieces };
        const far = { x: 4 * by.x, y: 4 * by.y, angle: 4 * by.angle };
        const before = alone(held);
        const key = `${obstacle.id}/${pieces[nail % pieces.length]?.id}`;
        const after = laid(solveLayout(before, ARENA, wished(held, which, far)));
        expect(poses(after).get(key)).toEqual(poses(before).get(key));
        expect(worst(after)).toBeLessThan(1e-9);
      }),
      { numRuns: 12 },
    );
  });
});
