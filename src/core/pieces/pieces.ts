import { barrel } from './barrel.ts';
import { bridge } from './bridge.ts';
import { gate } from './gate.ts';
import { mailbox } from './mailbox.ts';
import { marker } from './marker.ts';
import type { PieceKind } from './piece.ts';
import { plant } from './plant.ts';
import { pole } from './pole.ts';
import { post } from './post.ts';
import { waterBox } from './water-box.ts';

/** Every kind of piece, in the order in which a truck list shows them. */
export const PIECE_KINDS: readonly PieceKind[] = [pole, marker, gate, bridge, barrel, post, plant, waterBox, mailbox];

export function pieceKind(id: string): PieceKind | undefined {
  return PIECE_KINDS.find((kind) => kind.id === id);
}
