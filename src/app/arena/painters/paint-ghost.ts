import type { PlacedPiece } from '../../../core/course/placed.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Point } from '../../../core/plane/point.ts';
import { ORIGIN, type Pose, toWorld } from '../../../core/plane/pose.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import { type Camera, type ScreenSize, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { labelPlaces } from './label-places.ts';
import { trace } from './marks.ts';
import { paintPlate } from './paint-plate.ts';
import { font, textWidth } from './typeface.ts';

/** The strokes of the first and the second ghost, pixels: they are told apart without their colours. */
export const GHOST_DASHES = [
  [7, 4],
  [2, 3.5],
] as const;

/** A piece narrower than this on the screen is one stroke: its two sides would run into one another. Pixels. */
const ONE_STROKE = 5;
/** Opacity of a ghost's inside. */
const INSIDE = 0.13;
const HEAD = 11;
const RING = 6;
/** The height of the plate under an arrow's words, pixels. */
const LINE = 22;
/** Places along an arrow that its words keep off, as fractions. */
const SHAFT = Array.from({ length: 25 }, (_, i) => i / 24);

/** Whether the ghost is of the first or the second compared layout. */
export type GhostIndex = 0 | 1;

/** The middle of a piece along its long side, on the ground. */
const axisOf = memoizeByIdentity((piece: PlacedPiece): readonly [Point, Point] => {
  const half = piece.figure.length / 2;
  return [toWorld(piece.pose, { x: -half, y: 0 }), toWorld(piece.pose, { x: half, y: 0 })];
});

/** Paints the outlines of pieces that lie so in another layout. */
export function paintGhost(
  context: CanvasRenderingContext2D,
  pieces: readonly PlacedPiece[],
  { camera, theme, index }: DrawContext & { readonly index: GhostIndex },
): void {
  const ink = theme.ghosts[index];
  context.strokeStyle = ink;
  context.fillStyle = ink;
  context.lineCap = 'butt';
  context.lineJoin = 'round';
  context.setLineDash([...GHOST_DASHES[index]]);
  for (const piece of pieces) {
    const isThin = piece.figure.width * camera.scale < ONE_STROKE;
    trace(context, isThin ? axisOf(piece) : piece.footprint, camera);
    context.lineWidth = isThin ? 2.2 : 1.6;
    if (!isThin) {
      context.closePath();
      context.globalAlpha = INSIDE;
      context.fill();
      context.globalAlpha = 1;
    }
    context.stroke();
  }
  context.setLineDash([]);
}

/** A thing that came from elsewhere, with the words for how far. */
export interface OriginArrow {
  readonly from: Pose;
  readonly to: Pose;
  readonly words: string;
  readonly index: GhostIndex;
}

/** Where the words of each arrow stand: beside its middle, off all arrows and off what lies in the shown layout. */
export function originPlates(
  arrows: readonly OriginArrow[],
  { camera, size, kept }: { readonly camera: Camera; readonly size: ScreenSize; readonly kept: readonly Bounds[] },
): readonly Bounds[] {
  const ends = arrows.map(({ from, to }) => [screenOf(camera, from), screenOf(camera, to)] as const);
  const shafts = ends.flatMap(([a, b]) => SHAFT.map((t) => ({ x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) })));
  const requests = arrows.map(({ words }, index) => {
    const [a, b] = ends[index] ?? [ORIGIN, ORIGIN];
    const [x, y] = [(a.x + b.x) / 2, (a.y + b.y) / 2];
    return { box: { minX: x, maxX: x, minY: y, maxY: y }, width: textWidth(words, 'bold') + 16, height: LINE };
  });
  const room = { minX: 2, minY: 2, maxX: size.width - 2, maxY: size.height - 2 };
  return labelPlaces(requests, shafts, { room, kept }).map(({ x, y }, index) => {
    const half = (requests[index]?.width ?? 0) / 2;
    return { minX: x - half, maxX: x + half, minY: y - LINE / 2, maxY: y + LINE / 2 };
  });
}

/** Paints an arrow from where a thing lies in another layout to where it lies in the shown one. */
export function paintOrigin(
  context: CanvasRenderingContext2D,
  arrow: OriginArrow,
  { camera, theme, plate }: DrawContext & { readonly plate: Bounds },
): void {
  const [a, b] = [screenOf(camera, arrow.from), screenOf(camera, arrow.to)];
  const ink = theme.ghosts[arrow.index];
  context.lineJoin = 'round';
  for (const [width, colour] of [
    [6, theme.plate],
    [2.4, ink],
  ] as const) {
    context.strokeStyle = colour;
    context.lineWidth = width;
    traceArrow(context, a, b);
    context.stroke();
  }
  context.font = font('bold');
  paintPlate(context, plate, arrow.words, { theme });
}

/** A ring at its beginning, so that the ghost of something that was turned only is marked too, and a head at its end. */
function traceArrow(context: CanvasRenderingContext2D, a: Point<'screen'>, b: Point<'screen'>): void {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  context.beginPath();
  context.arc(a.x, a.y, RING, 0, 2 * Math.PI);
  if (long <= RING + HEAD) return;
  const angle = Math.atan2(b.y - a.y, b.x - a.x);
  context.moveTo(a.x + RING * Math.cos(angle), a.y + RING * Math.sin(angle));
  context.lineTo(b.x, b.y);
  for (const side of [1, -1] as const) {
    const back = angle + Math.PI + side * 0.45;
    context.moveTo(b.x, b.y);
    context.lineTo(b.x + HEAD * Math.cos(back), b.y + HEAD * Math.sin(back));
  }
}
