import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Values } from '../pieces/params.ts';
import type { Figure, Piece, PieceKind } from '../pieces/piece.ts';
import { pieceKind } from '../pieces/pieces.ts';
import { compose, isSamePose, type Pose } from '../plane/pose.ts';
import { type Bounds, type Ring, ringBounds, transformRing } from '../plane/ring.ts';

/** A piece where it lies on the ground. `key` is `obstacle/piece`, unique in the layout. */
export interface PlacedPiece {
  readonly key: string;
  readonly obstacle: string;
  readonly piece: Piece;
  readonly kind: PieceKind;
  readonly pose: Pose;
  readonly figure: Figure;
  readonly footprint: Ring;
  /** Of the footprint. */
  readonly bounds: Bounds;
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

const figures = new WeakMap<Values, { readonly kind: PieceKind; readonly figure: Figure }>();
const pieces = new WeakMap<Piece, PlacedPiece>();
const obstacles = new WeakMap<Obstacle, PlacedObstacle>();

/** The figure of a piece's values, cached: moving a pole does not draw it again. */
export function figureOf(kind: PieceKind, values: Values): Figure {
  const cached = figures.get(values);
  if (cached?.kind === kind) return cached.figure;
  const figure = kind.figure(values);
  figures.set(values, { kind, figure });
  return figure;
}

function placedPiece(obstacle: Obstacle, piece: Piece, kind: PieceKind): PlacedPiece {
  const pose = compose(obstacle.pose, piece.pose);
  const key = pieceKey(obstacle.id, piece.id);
  const cached = pieces.get(piece);
  if (cached !== undefined && cached.key === key && isSamePose(cached.pose, pose)) return cached;
  const figure = figureOf(kind, piece.values);
  const footprint = transformRing(figure.footprint, pose);
  const bounds = ringBounds(footprint);
  const made: PlacedPiece = { key, obstacle: obstacle.id, piece, kind, pose, figure, footprint, bounds };
  pieces.set(piece, made);
  return made;
}

/**
 * The obstacle on the ground: the same object for the same obstacle, so that what did not move is not worked out again.
 * Pieces of a kind this program does not know have no footprint and are left out.
 */
export function placedObstacle(obstacle: Obstacle): PlacedObstacle {
  const cached = obstacles.get(obstacle);
  if (cached !== undefined) return cached;
  const lying = obstacle.pieces.flatMap((piece) => {
    const kind = pieceKind(piece.kind);
    return kind === undefined ? [] : [placedPiece(obstacle, piece, kind)];
  });
  const bounds =
    lying.length > 0 ? ringBounds(lying.flatMap(({ footprint }) => footprint)) : ringBounds([obstacle.pose]);
  const made: PlacedObstacle = { obstacle, pieces: lying, bounds };
  obstacles.set(obstacle, made);
  return made;
}
