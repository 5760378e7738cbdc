import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Arena, Layout } from './course.ts';
import { obstacleOf } from './ids.ts';
import { placedObstacle } from './placed.ts';
import { holdingsOf } from './resolved-constraints.ts';
import { tied } from './solver-problem.ts';

/** An obstacle's own measures hold when none is off by more than this, metres or radians. */
const HELD = 1e-9;

const NOWHERE: Arena = { title: '', length: 0, width: 0, entrance: { wall: 'south', at: 0, width: 0 } };
const held = new WeakMap<Obstacle, boolean>();

/** Whether everything that the obstacle itself holds is met as its pieces lie; where it lies does not matter. */
export function holdsItself(obstacle: Obstacle): boolean {
  const known = held.get(obstacle);
  if (known !== undefined) return known;
  const alone: Layout = {
    id: '',
    title: '',
    obstacles: [obstacle],
    constraints: [],
    ride: { start: obstacle.pose, legs: [] },
  };
  const { problem } = tied(alone, NOWHERE);
  const poses = new Map(problem.bodies.map((body) => [body.id, body.pose]));
  const holds = problem.ties.every((tie) =>
    tie.rows(tie.bodies.map((id) => poses.get(id) ?? obstacle.pose)).every(({ value }) => Math.abs(value) <= HELD),
  );
  held.set(obstacle, holds);
  return holds;
}

/**
 * The obstacles that move as one body: those whose own measures hold, of which no single piece is wished (`loosened`),
 * and none of whose pieces the layout ties to one another. How loose they are inside does not matter: what is carried or
 * pulled whole keeps its shape.
 */
export function wholeObstacles(layout: Layout, loosened: ReadonlySet<string>): ReadonlySet<string> {
  const loose = new Set(loosened);
  for (const { owner, grips } of holdingsOf(layout)) {
    if (owner !== undefined) continue;
    const owners = grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : []));
    owners.forEach((each, i) => {
      if (owners.indexOf(each) < i) loose.add(each);
    });
  }
  const whole = layout.obstacles.filter(
    (each) => !loose.has(each.id) && placedObstacle(each).pieces.length > 0 && holdsItself(each),
  );
  return new Set(whole.map(({ id }) => id));
}
