/** Stations of a passage brought from their pieces onto the ground. */
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Radians } from '../measure/quantity.ts';
import type { Move, Passage, Pivot, Station } from '../obstacles/passage.ts';
import { compose, type Pose, toWorld } from '../plane/pose.ts';

/** A station where it lies. `cross` carries its pole and the fraction along it. */
export type GroundStation =
  | { readonly kind: 'cross'; readonly pose: Pose; readonly pole: PlacedPiece; readonly fraction: number }
  | { readonly kind: 'reach'; readonly pose: Pose; readonly move: Exclude<Move, 'turn'>; readonly piece: PlacedPiece }
  | { readonly kind: 'turn'; readonly by: Radians; readonly about?: Pivot }
  | { readonly kind: 'missing'; readonly piece: string };

/** Where a line square to the pole goes over it: at the fraction along its axis, towards its +y side for way 1. */
export function squarePose(pole: PlacedPiece, fraction: number, way: 1 | -1): Pose {
  const at = toWorld(pole.pose, { x: (fraction - 0.5) * pole.figure.length, y: 0 });
  return { ...at, angle: pole.pose.angle + (way * Math.PI) / 2 };
}

function groundStation(obstacle: PlacedObstacle, station: Station): GroundStation {
  if (station.kind === 'turn') return station;
  const piece = obstacle.pieces.find(({ piece: { id } }) => id === station.piece);
  if (piece === undefined) return { kind: 'missing', piece: station.piece };
  if (station.kind === 'reach') {
    return { kind: 'reach', pose: compose(piece.pose, station.pose), move: station.move, piece };
  }
  const pose = squarePose(piece, station.fraction, station.way);
  return { kind: 'cross', pose, pole: piece, fraction: station.fraction };
}

export function groundStations(obstacle: PlacedObstacle, passage: Passage): GroundStation[] {
  return passage.stations.map((station) => groundStation(obstacle, station));
}
