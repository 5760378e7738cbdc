import type { Draft } from 'immer';
import type { Metres } from '../measure/quantity.ts';
import { compose, normalizeAngle, type Pose, toLocal } from '../plane/pose.ts';
import type { Layout } from './course.ts';
import { chosenBy } from './ids.ts';

/** A rigid motion on the ground: a shift and a turn. */
export type Transform = (pose: Pose) => Pose;

/**
 * Moved positions are rounded to the nanometre, so that files read `4.572` and not the rounding error of the
 * arithmetic.
 */
const GRAIN = 1e9;

export function roundToNanometre(value: Metres): Metres {
  // Adding 0 turns −0 into 0.
  return Math.round(value * GRAIN) / GRAIN + 0;
}

function roundPose(pose: Pose): Pose {
  return { x: roundToNanometre(pose.x), y: roundToNanometre(pose.y), angle: normalizeAngle(pose.angle) + 0 };
}

/**
 * Moves what the keys name over the ground. Bends between two whole obstacles that both move, move too; the others stay
 * where the designer put them.
 */
export function transformChosen(layout: Draft<Layout>, keys: readonly string[], transform: Transform): void {
  const { whole, pieces } = chosenBy(keys);
  for (const obstacle of layout.obstacles) {
    const frame = obstacle.pose;
    if (whole.has(obstacle.id)) Object.assign(frame, roundPose(transform(frame)));
    const some = pieces.get(obstacle.id);
    if (some === undefined) continue;
    for (const piece of obstacle.pieces) {
      if (!some.has(piece.id)) continue;
      Object.assign(piece.pose, roundPose(toLocal(frame, transform(compose(frame, piece.pose)))));
    }
  }
  for (const [index, leg] of layout.ride.legs.entries()) {
    const before = layout.ride.legs[index - 1];
    if (before === undefined || !whole.has(before.obstacle) || !whole.has(leg.obstacle)) continue;
    for (const bend of leg.bends) {
      const { x, y } = roundPose(transform({ x: bend.x, y: bend.y, angle: 0 }));
      Object.assign(bend, { x, y });
    }
  }
}
