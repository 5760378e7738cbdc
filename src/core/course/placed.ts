import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Figure, Piece, PieceKind } from '../pieces/piece.ts';
import type { Pose } from '../plane/pose.ts';
import type { Bounds, Ring } from '../plane/ring.ts';

/** A piece where it lies on the ground. `key` is `obstacle/piece`, unique in the layout. */
export interface PlacedPiece {
  readonly key: string;
  readonly obstacle: string;
  readonly piece: Piece;
  readonly kind: PieceKind;
  readonly pose: Pose;
  readonly figure: Figure;
  readonly footprint: Ring;
}

/** An obstacle with its pieces on the ground; `bounds` holds their footprints. */
export interface PlacedObstacle {
  readonly obstacle: Obstacle;
  readonly pieces: readonly PlacedPiece[];
  readonly bounds: Bounds;
}

/** The key by which a layout names one piece. */
export function pieceKey(obstacle: string, piece: string): string {
  return `${obstacle}/${piece}`;
}
