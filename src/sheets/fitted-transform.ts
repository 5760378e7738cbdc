import type { Bounds } from '../core/plane/ring.ts';
import type { LabelledMarks } from './dimension-labels.ts';
import type { PaperTransform } from './paper-transform.ts';

/** Denominators of drawings of a few pieces. */
const SCALES = [20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250, 300, 400, 500, 750, 1000];
/** Room in a drawing for letters and for tapes that lead off to walls, mm. */
const EDGE = { x: 13, y: 11 };

/** At the largest scale at which the extent fits into the room, or so many steps smaller, lying or turned a quarter, in its middle. */
function fittedTransform(extent: Bounds, room: Bounds, smaller: number): PaperTransform {
  const [width, height] = [room.maxX - room.minX - 2 * EDGE.x, room.maxY - room.minY - 2 * EDGE.y];
  const [along, across] = [extent.maxX - extent.minX, extent.maxY - extent.minY];
  const needed = (turned: boolean): number =>
    Math.max((1000 * (turned ? across : along)) / width, (1000 * (turned ? along : across)) / height);
  const turned = needed(true) < needed(false) * 0.99;
  const largest = SCALES.findIndex((each) => each >= needed(turned));
  const scale = SCALES[largest + smaller] ?? SCALES.at(-1) ?? 1000;
  const k = 1000 / scale;
  const centre = { x: (extent.minX + extent.maxX) / 2, y: (extent.minY + extent.maxY) / 2 };
  const middle = { x: (room.minX + room.maxX) / 2, y: (room.minY + room.maxY) / 2 };
  return turned
    ? { scale, turned, x: middle.x + centre.y * k, y: middle.y + centre.x * k }
    : { scale, turned, x: middle.x - centre.x * k, y: middle.y + centre.y * k };
}

/** How many steps smaller than the room allows a drawing is tried. */
const SMALLER = [0, 1, 2];
/** A drawing smaller than this is hard to work from. */
export const SMALLEST_SCALE = 75;

/** A drawing with the transform under which it is drawn. */
export interface ScaledDrawing {
  readonly transform: PaperTransform;
  readonly drawn: LabelledMarks;
}

/** The drawing as large as its room allows; smaller where only that leaves room for all of its labels. */
export function clearestDrawing(
  extent: Bounds,
  room: Bounds,
  draw: (transform: PaperTransform) => LabelledMarks,
): ScaledDrawing {
  const drawnAt = (smaller: number): ScaledDrawing => {
    const transform = fittedTransform(extent, room, smaller);
    return { transform, drawn: draw(transform) };
  };
  let largest: ScaledDrawing | undefined;
  for (const smaller of SMALLER) {
    const tried = drawnAt(smaller);
    if (tried.drawn.isClear) return tried;
    largest ??= tried;
    if (tried.transform.scale >= SMALLEST_SCALE) break;
  }
  return largest ?? drawnAt(0);
}
