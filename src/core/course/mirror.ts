import type { Constraint } from '../constraints/constraint.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Passage, Station } from '../obstacles/passage.ts';
import { mirrored, type Pose } from '../plane/pose.ts';
import { grained } from './carry.ts';
import type { Layout, Leg } from './course.ts';
import { mapped } from './sharing.ts';

/** Adding 0 turns −0 into 0, so that mirroring twice gives back the same numbers. */
function reflected(local: Pose): Pose {
  const { x, y, angle } = mirrored(local);
  return { x, y: y + 0, angle: angle + 0 };
}

function reflectedStation(station: Station): Station {
  switch (station.kind) {
    case 'cross':
      return { ...station, way: station.way === 1 ? -1 : 1 };
    case 'reach':
      return { ...station, pose: reflected(station.pose) };
    case 'turn':
      return { ...station, by: -station.by + 0 };
  }
}

function reflectedPassage(passage: Passage): Passage {
  return { ...passage, stations: passage.stations.map(reflectedStation) };
}

function reflectedConstraint(constraint: Constraint): Constraint {
  if (constraint.side === undefined) return constraint;
  return { ...constraint, side: constraint.side === 1 ? -1 : 1 };
}

/** The mirror image of an obstacle about its own x axis. Twice gives back the same. */
export function mirrorImage(obstacle: Obstacle): Obstacle {
  return {
    ...obstacle,
    side: obstacle.side === 1 ? -1 : 1,
    pieces: obstacle.pieces.map((piece) => ({ ...piece, pose: reflected(piece.pose) })),
    constraints: obstacle.constraints.map(reflectedConstraint),
    passages: obstacle.passages.map(reflectedPassage),
  };
}

/** A chosen lead goes with the bend, so it changes hands with the mirror image. */
function reflectedLeg(leg: Leg): Leg {
  if (leg.lead === undefined) return leg;
  return { ...leg, lead: leg.lead === 'left' ? 'right' : 'left' };
}

/** Whether all the pieces that it grips are on mirrored obstacles, and no wall, which stays as it is. */
function mirrorsWhole(constraint: Constraint, whole: ReadonlySet<string>): boolean {
  return constraint.grips.every((grip) => 'piece' in grip && whole.has(grip.piece.split('/')[0] ?? ''));
}

/**
 * The layout with these obstacles mirrored: one about its own x axis, several about the line along the arena through
 * the middle of their frames. Only whole obstacles have a mirror image.
 */
export function mirroredLayout(layout: Layout, whole: ReadonlySet<string>): Layout {
  const chosen = layout.obstacles.filter((obstacle) => whole.has(obstacle.id));
  if (chosen.length === 0) return layout;
  const heights = chosen.map((obstacle) => obstacle.pose.y);
  const sum = grained(Math.min(...heights)) + grained(Math.max(...heights));
  const across = (pose: Pose): Pose =>
    chosen.length === 1 ? pose : { x: pose.x, y: grained(sum - pose.y), angle: -pose.angle + 0 };
  return {
    ...layout,
    obstacles: mapped(layout.obstacles, (obstacle) =>
      whole.has(obstacle.id) ? { ...mirrorImage(obstacle), pose: across(obstacle.pose) } : obstacle,
    ),
    constraints: mapped(layout.constraints, (constraint) =>
      mirrorsWhole(constraint, whole) ? reflectedConstraint(constraint) : constraint,
    ),
    ride: {
      ...layout.ride,
      legs: mapped(layout.ride.legs, (leg) => (whole.has(leg.obstacle) ? reflectedLeg(leg) : leg)),
    },
  };
}
