import { barrelPiece } from './barrel.ts';
import { bridgePiece } from './bridge.ts';
import { gatePiece } from './gate.ts';
import { mailboxPiece } from './mailbox.ts';
import { markerPiece } from './marker.ts';
import type { PieceKind } from './piece.ts';
import { plantPiece } from './plant.ts';
import { polePiece } from './pole.ts';
import { postPiece } from './post.ts';
import { waterBoxPiece } from './water-box.ts';

/** Every kind of piece, in the order in which a truck list shows them. */
export const PIECE_KINDS: readonly PieceKind[] = [
  polePiece,
  markerPiece,
  gatePiece,
  bridgePiece,
  barrelPiece,
  postPiece,
  plantPiece,
  waterBoxPiece,
  mailboxPiece,
];

export function pieceKind(id: string): PieceKind | undefined {
  return PIECE_KINDS.find((kind) => kind.id === id);
}
