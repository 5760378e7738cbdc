import type { Metres } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { composed, type Pose, within, wrapped } from '../plane/pose.ts';
import type { Layout, Leg } from './course.ts';
import { type Chosen, chosenBy } from './keys.ts';
import { mapped } from './sharing.ts';

/** Where the ground carries a pose: a shift, a turn. */
export type Motion = (pose: Pose) => Pose;

/** Moved places are kept to the nanometre, so that files read `4.572` and not the dust of the arithmetic. */
const GRAIN = 1e9;

export function grained(value: Metres): Metres {
  // Adding 0 turns −0 into 0.
  return Math.round(value * GRAIN) / GRAIN + 0;
}

function settled(pose: Pose): Pose {
  return { x: grained(pose.x), y: grained(pose.y), angle: wrapped(pose.angle) + 0 };
}

function carriedObstacle(obstacle: Obstacle, chosen: Chosen, motion: Motion): Obstacle {
  if (chosen.whole.has(obstacle.id)) return { ...obstacle, pose: settled(motion(obstacle.pose)) };
  const some = chosen.pieces.get(obstacle.id);
  if (some === undefined) return obstacle;
  const pieces = mapped(obstacle.pieces, (piece) =>
    some.has(piece.id)
      ? { ...piece, pose: settled(within(obstacle.pose, motion(composed(obstacle.pose, piece.pose)))) }
      : piece,
  );
  return pieces === obstacle.pieces ? obstacle : { ...obstacle, pieces };
}

/** Bends between two obstacles that both go along go along too; the others stay where the designer put them. */
function carriedLegs(legs: readonly Leg[], whole: ReadonlySet<string>, motion: Motion): readonly Leg[] {
  return mapped(legs, (leg, index) => {
    const before = legs[index - 1];
    const along = before !== undefined && whole.has(before.obstacle) && whole.has(leg.obstacle);
    if (!along || leg.bends.length === 0) return leg;
    const bends = leg.bends.map((bend) => {
      const { x, y } = settled(motion({ x: bend.x, y: bend.y, angle: 0 }));
      return { x, y };
    });
    return { ...leg, bends };
  });
}

/** The layout with what the keys name carried over the ground. */
export function carried(layout: Layout, keys: readonly string[], motion: Motion): Layout {
  const chosen = chosenBy(keys);
  const obstacles = mapped(layout.obstacles, (obstacle) => carriedObstacle(obstacle, chosen, motion));
  if (obstacles === layout.obstacles) return layout;
  const legs = carriedLegs(layout.ride.legs, chosen.whole, motion);
  const ride = legs === layout.ride.legs ? layout.ride : { ...layout.ride, legs };
  return { ...layout, obstacles, ride };
}
