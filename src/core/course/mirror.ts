import type { Constraint } from '../constraints/constraint.ts';
import { mirroredBuilt } from '../obstacles/made.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Pose } from '../plane/pose.ts';
import { grained } from './carry.ts';
import type { Layout, Leg } from './course.ts';
import { obstacleOf } from './keys.ts';
import { mapped } from './sharing.ts';

/** The mirror image of an obstacle about its own x axis. Twice gives back the same. */
export function mirrorImage(obstacle: Obstacle): Obstacle {
  const { pieces, constraints, passages } = mirroredBuilt({ ...obstacle, kind: 'built', facts: {} });
  return { ...obstacle, side: obstacle.side === 1 ? -1 : 1, pieces, constraints, passages };
}

/** A kind that tells left from right stores its side; where none is stored there is none to change. */
function reflectedConstraint(constraint: Constraint): Constraint {
  if (constraint.side === undefined) return constraint;
  return { ...constraint, side: constraint.side === 1 ? -1 : 1 };
}

/** Whether all the pieces that it grips are mirrored. Between a mirrored and another piece nothing is known: it stays. */
function mirrorsWhole(constraint: Constraint, whole: ReadonlySet<string>): boolean {
  const owners = constraint.grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : []));
  return owners.length > 0 && owners.every((owner) => whole.has(owner));
}

/** A chosen lead goes with the bend, so it changes hands with the mirror image. */
function reflectedLeg(leg: Leg): Leg {
  if (leg.lead === undefined) return leg;
  return { ...leg, lead: leg.lead === 'left' ? 'right' : 'left' };
}

/**
 * The layout with these obstacles mirrored: one about its own x axis, several about the line along the arena through
 * the middle of their frames.
 */
export function mirroredLayout(layout: Layout, whole: ReadonlySet<string>): Layout {
  const chosen = layout.obstacles.filter((obstacle) => whole.has(obstacle.id));
  if (chosen.length === 0) return layout;
  const heights = chosen.map((obstacle) => grained(obstacle.pose.y));
  const sum = Math.min(...heights) + Math.max(...heights);
  const across = (pose: Pose): Pose =>
    chosen.length === 1 ? pose : { x: pose.x, y: grained(sum - pose.y), angle: -pose.angle + 0 };
  const legs = mapped(layout.ride.legs, (leg) => (whole.has(leg.obstacle) ? reflectedLeg(leg) : leg));
  return {
    ...layout,
    obstacles: mapped(layout.obstacles, (obstacle) =>
      whole.has(obstacle.id) ? { ...mirrorImage(obstacle), pose: across(obstacle.pose) } : obstacle,
    ),
    constraints: mapped(layout.constraints, (constraint) =>
      mirrorsWhole(constraint, whole) ? reflectedConstraint(constraint) : constraint,
    ),
    ride: legs === layout.ride.legs ? layout.ride : { ...layout.ride, legs },
  };
}
