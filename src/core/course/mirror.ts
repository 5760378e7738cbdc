import { castDraft, current, type Draft } from 'immer';
import type { Constraint } from '../constraints/constraint.ts';
import { mirroredBuilt } from '../obstacles/build.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Layout } from './course.ts';
import { obstacleOf } from './ids.ts';
import { roundToNanometre } from './transform.ts';

/** Mirrors an obstacle about its own x axis. Twice gives back the same. */
function mirrorObstacle(obstacle: Draft<Obstacle>): void {
  const image = castDraft(mirroredBuilt({ ...current(obstacle), kind: 'built', facts: {} }));
  obstacle.side = obstacle.side === 1 ? -1 : 1;
  obstacle.pieces = image.pieces;
  obstacle.constraints = image.constraints;
  obstacle.passages = image.passages;
}

/**
 * Whether all the pieces that it grips are mirrored. A constraint between a mirrored and another piece has no known
 * side: it stays as it is.
 */
function isWhollyMirrored(constraint: Constraint, whole: ReadonlySet<string>): boolean {
  const owners = constraint.grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : []));
  return owners.length > 0 && owners.every((owner) => whole.has(owner));
}

/** Mirrors these obstacles: one about its own x axis, several about the line along the arena through their middle. */
export function mirrorObstacles(layout: Draft<Layout>, whole: ReadonlySet<string>): void {
  const chosen = layout.obstacles.filter((obstacle) => whole.has(obstacle.id));
  const heights = chosen.map((obstacle) => roundToNanometre(obstacle.pose.y));
  const sum = Math.min(...heights) + Math.max(...heights);
  for (const obstacle of chosen) {
    mirrorObstacle(obstacle);
    if (chosen.length === 1) continue;
    obstacle.pose.y = roundToNanometre(sum - obstacle.pose.y);
    obstacle.pose.angle = -obstacle.pose.angle + 0;
  }
  for (const constraint of layout.constraints) {
    // A kind that tells left from right stores its side; where none is stored there is none to change.
    if (constraint.side === undefined || !isWhollyMirrored(constraint, whole)) continue;
    constraint.side = constraint.side === 1 ? -1 : 1;
  }
  for (const leg of layout.ride.legs) {
    if (!whole.has(leg.obstacle)) continue;
    // A chosen lead belongs to the bend, so the mirror image has the other lead.
    if (leg.lead !== undefined) leg.lead = leg.lead === 'left' ? 'right' : 'left';
    for (const passed of leg.passes ?? []) {
      if (whole.has(passed.obstacle)) passed.hand = passed.hand === 'left' ? 'right' : 'left';
    }
  }
}
