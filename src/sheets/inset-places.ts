/** Where insets stand: in free ground of the drawing, or in a row that the page keeps for them. */
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { BETWEEN, rowsOf, type Sized } from './frame-rows.ts';
import { type Inset, placeOf } from './insets.ts';
import { movedMark, movedTransform } from './moved-marks.ts';
import { addShape, coveredByBox, coveredByStroke, grown, type ShapeIndex } from './paper-shapes.ts';
import type { PaperPoint, PaperTransform } from './paper-transform.ts';

/** Between a frame and what lies in the drawing, mm. */
const AIR = 2.2;
/** Places are tried so far apart, mm. */
const STEP = 3;
/** A line from a frame to its obstacle is not longer than this, mm. */
const LONGEST = 70;

/** A frame in its place. */
export interface PlacedInset {
  readonly inset: Inset;
  readonly transform: PaperTransform;
  readonly box: Bounds;
}

function boxAt({ x, y }: PaperPoint, { width, height }: Sized): Bounds {
  return { minX: x, maxX: x + width, minY: y, maxY: y + height };
}

function placedAt(inset: Inset, at: PaperPoint): PlacedInset {
  return { inset, transform: movedTransform(inset.transform, at), box: boxAt(at, inset) };
}

/** In the row that is kept for them. */
export function insetsInRow(insets: readonly Inset[], row: Bounds): readonly PlacedInset[] {
  const { at } = rowsOf(insets, row.maxX - row.minX);
  return insets.map((inset, i) => placedAt(inset, { x: row.minX + (at[i]?.x ?? 0), y: row.minY + (at[i]?.y ?? 0) }));
}

/** In free ground, each as near to its obstacle as it goes; undefined where one has no room. */
export function insetsInGround(
  insets: readonly Inset[],
  index: ShapeIndex,
  { room, transform }: { readonly room: Bounds; readonly transform: PaperTransform },
): readonly PlacedInset[] | undefined {
  const placed: PlacedInset[] = [];
  for (const inset of insets.toSorted((a, b) => b.width * b.height - a.width * a.height)) {
    const own = placeOf(inset.small, transform);
    let best: PaperPoint | undefined;
    let least = Number.POSITIVE_INFINITY;
    for (let y = room.minY; y <= room.maxY - inset.height; y += STEP) {
      for (let x = room.minX; x <= room.maxX - inset.width; x += STEP) {
        const box = boxAt({ x, y }, inset);
        const off = Math.hypot(
          Math.max(box.minX - own.x, 0, own.x - box.maxX),
          Math.max(box.minY - own.y, 0, own.y - box.maxY),
        );
        // Not so near that labels have no room between.
        const cost = off < own.reach + 9 ? off + 30 : off;
        if (cost >= least) continue;
        const inner = grown(box, AIR);
        if (placed.some((other) => touches(other.box, grown(box, BETWEEN)))) continue;
        const under = coveredByBox(index, inner);
        if (under.isSolid || under.lines > 0) continue;
        [best, least] = [{ x, y }, cost];
      }
    }
    if (best === undefined) return undefined;
    placed.push(placedAt(inset, best));
  }
  return placed;
}

function touches(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** Nothing else is set where a frame stands. */
export function addFrame(index: ShapeIndex, { box }: PlacedInset): void {
  const points = [
    { x: box.minX, y: box.minY },
    { x: box.maxX, y: box.minY },
    { x: box.maxX, y: box.maxY },
    { x: box.minX, y: box.maxY },
  ];
  addShape(index, { points, reach: 0.3, isFilled: true, firmness: 'solid' });
}

export function insetMarks({ inset, box }: PlacedInset): readonly Mark<'paper'>[] {
  return inset.marks.map((mark) => movedMark(mark, { x: box.minX, y: box.minY }));
}

/** The line from a frame to its obstacle, where one can be drawn that crosses nothing solid. */
export function insetLeader(
  index: ShapeIndex,
  { box }: PlacedInset,
  corners: readonly PaperPoint[],
): readonly [PaperPoint, PaperPoint] | undefined {
  const starts = edgePoints(box);
  const lines = starts
    .flatMap((from) => corners.map((to) => [from, to] as const))
    .filter(([from, to]) => distance(from, to) <= LONGEST)
    .sort((a, b) => distance(a[0], a[1]) - distance(b[0], b[1]));
  for (const [from, to] of lines) {
    const long = distance(from, to);
    if (long < 1.5) continue;
    const at = (t: number): PaperPoint => ({ x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t });
    const isFree = !coveredByStroke(index, [at(0.6 / long), at(1 - 0.5 / long)], 0.25).isSolid;
    // A hair of air between the line and its frame.
    if (isFree) return [at(0.4 / long), to];
  }
  return undefined;
}

function edgePoints({ minX, maxX, minY, maxY }: Bounds): readonly PaperPoint[] {
  return [0.15, 0.5, 0.85].flatMap((t) => {
    const [x, y] = [minX + (maxX - minX) * t, minY + (maxY - minY) * t];
    return [
      { x, y: minY },
      { x, y: maxY },
      { x: minX, y },
      { x: maxX, y },
    ];
  });
}
