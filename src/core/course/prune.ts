import type { Draft } from 'immer';
import type { Grip } from '../constraints/constraint.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Layout } from './course.ts';
import { chosenBy } from './ids.ts';
import { adaptLeg, isForward } from './legs.ts';
import { pieceKey } from './placed.ts';

/** Takes out of a draft's list what does not stay. A list of which all stays is not touched: filtering would copy it. */
function retain<T>(list: T[], stays: (item: T) => boolean): void {
  const staying = list.filter(stays);
  if (staying.length < list.length) list.splice(0, list.length, ...staying);
}

/** Takes pieces away, and the constraints and stations on them. A passage that loses its beginning goes. */
function erasePieces(obstacle: Draft<Obstacle>, gone: ReadonlySet<string>): void {
  retain(obstacle.pieces, (piece) => !gone.has(piece.id));
  retain(obstacle.constraints, ({ grips }) => grips.every((grip) => !('piece' in grip) || !gone.has(grip.piece)));
  for (const passage of obstacle.passages) {
    retain(passage.stations, (station) => station.kind === 'turn' || !gone.has(station.piece));
  }
  retain(obstacle.passages, ({ stations: [first] }) => first !== undefined && isForward(first));
}

/** Takes away what the keys name, and an obstacle with its last piece. What hung on it is left to `tidy`. */
export function eraseFrom(layout: Draft<Layout>, keys: readonly string[]): void {
  const { whole, pieces } = chosenBy(keys);
  for (const obstacle of layout.obstacles) {
    const gone = pieces.get(obstacle.id);
    if (gone !== undefined) erasePieces(obstacle, gone);
  }
  retain(layout.obstacles, (obstacle) => !whole.has(obstacle.id) && obstacle.pieces.length > 0);
}

/**
 * Leaves legs and constraints only on what exists. A leg whose passage is gone takes the obstacle's first; a gait that
 * its passage does not allow becomes the passage's usual one.
 */
export function tidy(layout: Draft<Layout>): void {
  const passages = new Map(layout.obstacles.map((obstacle) => [obstacle.id, obstacle.passages]));
  const keys = new Set(layout.obstacles.flatMap((each) => each.pieces.map((piece) => pieceKey(each.id, piece.id))));
  const isThere = (grip: Grip) => !('piece' in grip) || keys.has(grip.piece);
  retain(layout.constraints, (constraint) => constraint.grips.every(isThere));
  retain(layout.ride.legs, (leg) => (passages.get(leg.obstacle)?.length ?? 0) > 0);
  for (const leg of layout.ride.legs) {
    adaptLeg(leg, passages.get(leg.obstacle) ?? []);
    if (leg.passes === undefined) continue;
    retain(leg.passes, ({ obstacle }) => passages.has(obstacle));
    if (leg.passes.length === 0) delete leg.passes;
  }
}
