import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf } from './ids.ts';
import { placedObstacle } from './placed.ts';
import { resolvedConstraints } from './resolved-constraints.ts';
import { layoutProblem } from './solver-problem.ts';

/** An obstacle's own constraints count as met when none is off by more than this, metres or radians. */
const VALUE_TOLERANCE = 1e-9;

const NOWHERE: Arena = { title: '', length: 0, width: 0, entrance: { wall: 'south', at: 0, width: 0 } };

/** A layout that holds one obstacle and nothing else. */
export function layoutOfOne(obstacle: Obstacle): Layout {
  return { id: '', title: '', obstacles: [obstacle], constraints: [], ride: { start: obstacle.pose, legs: [] } };
}

/** Whether the constraints inside the obstacle are met as its pieces lie; where the obstacle lies does not matter. */
export const isConsistent = memoizeByIdentity((obstacle: Obstacle): boolean => {
  const { problem } = layoutProblem(layoutOfOne(obstacle), NOWHERE);
  const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const consistent = problem.constraints.every((equation) =>
    equation
      .residuals(equation.bodies.map((id) => poses.get(id) ?? obstacle.pose))
      .every(({ value }) => Math.abs(value) <= VALUE_TOLERANCE),
  );
  return consistent;
});

/**
 * The obstacles that move as one rigid body: their own constraints are met, no single piece of them is dragged
 * (`loosened`), and no constraint of the layout joins two of their pieces. An obstacle with free parts is rigid too:
 * when it is dragged as a whole it keeps its shape.
 */
export function wholeObstacles(layout: Layout, loosened: ReadonlySet<string>): ReadonlySet<string> {
  const loose = new Set(loosened);
  for (const { owner, grips } of resolvedConstraints(layout)) {
    if (owner !== undefined) continue;
    const owners = grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : []));
    owners.forEach((each, i) => {
      if (owners.indexOf(each) < i) loose.add(each);
    });
  }
  const whole = layout.obstacles.filter(
    (each) => !loose.has(each.id) && placedObstacle(each).pieces.length > 0 && isConsistent(each),
  );
  return new Set(whole.map(({ id }) => id));
}
