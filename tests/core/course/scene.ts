/** A layout of an obstacle or two with constraints between them, for the tests of what holds. */
import type { Constraint } from '../../../src/core/constraints/constraint.ts';
import type { Arena, Layout } from '../../../src/core/course/course.ts';
import { layoutProblem } from '../../../src/core/course/solver-problem.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { build } from './sample.ts';

export const ARENA: Arena = {
  title: 'Larkhollow Fairground',
  length: 60,
  width: 30,
  entrance: { wall: 'west', at: 15, width: 4 },
};

export function layout(obstacles: readonly Obstacle[], constraints: readonly Constraint[] = []): Layout {
  return { id: 'a', title: 'A', obstacles, constraints, ride: { start: { x: 2, y: 15, angle: 0 }, legs: [] } };
}

export function withFixed(whole: Obstacle, piece: string): Obstacle {
  return { ...whole, pieces: whole.pieces.map((each) => (each.id === piece ? { ...each, fixed: true } : each)) };
}

export const run = (): Obstacle => build('run-1', 'run', { x: 20, y: 12, angle: 0 });
export const fan = (): Obstacle => build('fan-1', 'fan', { x: 35, y: 12, angle: 0 });
export const box = (): Obstacle => build('box-1', 'box', { x: 48, y: 20, angle: 0 });

/** A constraint on pieces by key, or on a wall by its name. */
export function held(
  id: string,
  kind: string,
  on: readonly (string | readonly [string, number])[],
  more: { readonly hold?: number; readonly side?: 1 | -1 } = {},
): Constraint {
  const grips = on.map((each) => {
    if (typeof each !== 'string') return { piece: each[0], at: each[1] };
    if (each === 'south' || each === 'east' || each === 'north' || each === 'west') return { wall: each } as const;
    return { piece: each };
  });
  return { id, kind, grips, ...more };
}

/** How many equations hold the layout where it lies: a bound that is kept has no gradient and counts as none. */
export function equationCount(of: Layout, arena: Arena): number {
  const { problem } = layoutProblem(of, arena);
  const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const rows = problem.constraints.flatMap((each) =>
    each.residuals(each.bodies.map((id) => poses.get(id) ?? { x: 0, y: 0, angle: 0 })),
  );
  return rows.filter(({ gradient }) => gradient.some((part) => part.some((slope) => slope !== 0))).length;
}
