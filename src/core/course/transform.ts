import type { Draft } from 'immer';
import type { Metres } from '../measure/quantity.ts';
import { composed, type Pose, within, wrapped } from '../plane/pose.ts';
import type { Layout } from './course.ts';
import { chosenBy } from './ids.ts';

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

/**
 * Carries over the ground what the keys name. Bends between two whole obstacles that both go along go along too; the
 * others stay where the designer put them.
 */
export function carry(layout: Draft<Layout>, keys: readonly string[], motion: Motion): void {
  const { whole, pieces } = chosenBy(keys);
  for (const obstacle of layout.obstacles) {
    const frame = obstacle.pose;
    if (whole.has(obstacle.id)) Object.assign(frame, settled(motion(frame)));
    const some = pieces.get(obstacle.id);
    if (some === undefined) continue;
    for (const piece of obstacle.pieces) {
      if (!some.has(piece.id)) continue;
      Object.assign(piece.pose, settled(within(frame, motion(composed(frame, piece.pose)))));
    }
  }
  for (const [index, leg] of layout.ride.legs.entries()) {
    const before = layout.ride.legs[index - 1];
    if (before === undefined || !whole.has(before.obstacle) || !whole.has(leg.obstacle)) continue;
    for (const bend of leg.bends) {
      const { x, y } = settled(motion({ x: bend.x, y: bend.y, angle: 0 }));
      Object.assign(bend, { x, y });
    }
  }
}
