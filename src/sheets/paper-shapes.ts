/** What lies on a drawing by its true outline, and which of it a label would cover. Millimetres on paper. */
import type { Bounds } from '../core/plane/ring.ts';
import { paperRingContains, paperSegmentDistance } from './occupancy-grid.ts';
import type { PaperPoint } from './paper-transform.ts';

/**
 * `solid`: nothing may lie on it. `faint`: no label may, but a line to one may cross it. `line`: the line of travel, which
 * a label leaves free where it can.
 */
export type Firmness = 'solid' | 'faint' | 'line';

/** A stroke with half its width about it; a closed one is filled. */
export interface PaperShape {
  readonly points: readonly PaperPoint[];
  readonly reach: number;
  readonly isFilled?: true;
  readonly firmness: Firmness;
}

interface Segment {
  readonly a: PaperPoint;
  readonly b: PaperPoint;
  readonly shape: PaperShape;
  /** With the reach of its shape about it. */
  readonly bounds: Bounds;
}

/** Side of a bin, mm. */
const BIN = 6;

/** Shapes of a drawing, found by place. */
export interface ShapeIndex {
  readonly bins: Map<number, Segment[]>;
  readonly filled: { readonly shape: PaperShape; readonly bounds: Bounds }[];
}

/** What a thing would lie on. */
export interface Covered {
  readonly isSolid: boolean;
  /** 1 where the line of travel is covered, else 0. */
  readonly lines: number;
}

export function emptyIndex(): ShapeIndex {
  return { bins: new Map(), filled: [] };
}

export function addShape({ bins, filled }: ShapeIndex, shape: PaperShape): void {
  const { points, reach } = shape;
  if (shape.isFilled === true) filled.push({ shape, bounds: pointBounds(points) });
  const closed = shape.isFilled === true && points[0] !== undefined ? [...points, points[0]] : points;
  for (let i = 1; i < closed.length; i += 1) {
    const [a, b] = [closed[i - 1] as PaperPoint, closed[i] as PaperPoint];
    const bounds = grown(pointBounds([a, b]), reach);
    const segment = { a, b, shape, bounds };
    const { left, right, top, bottom } = binRange(bounds);
    for (let row = top; row <= bottom; row += 1) {
      for (let column = left; column <= right; column += 1) {
        const key = row * ROW + column;
        const bin = bins.get(key);
        if (bin === undefined) bins.set(key, [segment]);
        else bin.push(segment);
      }
    }
  }
}

/** What a box would cover. */
export function coveredByBox({ bins, filled }: ShapeIndex, box: Bounds): Covered {
  let lines = 0;
  const { left, right, top, bottom } = binRange(box);
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) {
      const bin = bins.get(row * ROW + column);
      if (bin === undefined) continue;
      for (const { a, b, shape, bounds } of bin) {
        if ((shape.firmness === 'line' && lines > 0) || !boundsTouch(bounds, box)) continue;
        if (segmentBoxDistance(a, b, box) > shape.reach) continue;
        if (shape.firmness !== 'line') return { isSolid: true, lines };
        lines = 1;
      }
    }
  }
  const x = (box.minX + box.maxX) / 2;
  const y = (box.minY + box.maxY) / 2;
  for (const { shape, bounds } of filled) {
    if (boundsMeet(bounds, box) && paperRingContains(shape.points, x, y)) return { isSolid: true, lines };
  }
  return { isSolid: false, lines };
}

/** What a stroke with `reach` on either side of it would cover. */
export function coveredByStroke(
  { bins, filled }: ShapeIndex,
  [from, to]: readonly [PaperPoint, PaperPoint],
  reach: number,
): Covered {
  let lines = 0;
  const box = grown(pointBounds([from, to]), reach);
  const { left, right, top, bottom } = binRange(box);
  for (let row = top; row <= bottom; row += 1) {
    for (let column = left; column <= right; column += 1) {
      const bin = bins.get(row * ROW + column);
      if (bin === undefined) continue;
      for (const { a, b, shape, bounds } of bin) {
        if (shape.firmness === 'faint' || (shape.firmness === 'line' && lines > 0)) continue;
        if (!boundsTouch(bounds, box) || segmentsDistance(from, to, a, b) >= shape.reach + reach) continue;
        if (shape.firmness === 'solid') return { isSolid: true, lines };
        lines = 1;
      }
    }
  }
  for (const { shape, bounds } of filled) {
    if (boundsMeet(bounds, box) && paperRingContains(shape.points, from.x, from.y)) return { isSolid: true, lines };
  }
  return { isSolid: false, lines };
}

/** Whether the edge of an outline lies on nothing solid. */
export function isRingClear(index: ShapeIndex, ring: readonly PaperPoint[], reach: number): boolean {
  return ring.every((a, i) => !coveredByStroke(index, [a, ring[(i + 1) % ring.length] as PaperPoint], reach).isSolid);
}

/** Bins of one row of the page; no page is so wide. */
const ROW = 4096;

function binRange({ minX, maxX, minY, maxY }: Bounds) {
  return {
    left: Math.floor(minX / BIN),
    right: Math.floor(maxX / BIN),
    top: Math.floor(minY / BIN),
    bottom: Math.floor(maxY / BIN),
  };
}

export function pointBounds(points: readonly PaperPoint[]): Bounds {
  let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    maxX = Math.max(maxX, x);
    minY = Math.min(minY, y);
    maxY = Math.max(maxY, y);
  }
  return { minX, maxX, minY, maxY };
}

export function grown({ minX, maxX, minY, maxY }: Bounds, by: number): Bounds {
  return { minX: minX - by, maxX: maxX + by, minY: minY - by, maxY: maxY + by };
}

export function boundsMeet(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** The same where a shared edge counts. */
function boundsTouch(a: Bounds, b: Bounds): boolean {
  return a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;
}

/** Whether two strokes cross. */
export function strokesCross(a: PaperPoint, b: PaperPoint, p: PaperPoint, q: PaperPoint): boolean {
  const side = (o: PaperPoint, u: PaperPoint, v: PaperPoint) => (u.x - o.x) * (v.y - o.y) - (u.y - o.y) * (v.x - o.x);
  return side(a, b, p) * side(a, b, q) < 0 && side(p, q, a) * side(p, q, b) < 0;
}

export function segmentsDistance(a: PaperPoint, b: PaperPoint, p: PaperPoint, q: PaperPoint): number {
  if (strokesCross(a, b, p, q)) return 0;
  return Math.min(
    paperSegmentDistance(a.x, a.y, p, q),
    paperSegmentDistance(b.x, b.y, p, q),
    paperSegmentDistance(p.x, p.y, a, b),
    paperSegmentDistance(q.x, q.y, a, b),
  );
}

/** Distance of a place from a box; none inside of it. */
export function boxPointDistance({ minX, maxX, minY, maxY }: Bounds, { x, y }: PaperPoint): number {
  const [across, down] = [Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY)];
  return Math.sqrt(across * across + down * down);
}

/** Distance of a stroke from a box; none where it enters it. */
export function segmentBoxDistance(a: PaperPoint, b: PaperPoint, box: Bounds): number {
  if (insideSpan(a, b, box) !== undefined) return 0;
  return Math.min(
    boxPointDistance(box, a),
    boxPointDistance(box, b),
    paperSegmentDistance(box.minX, box.minY, a, b),
    paperSegmentDistance(box.maxX, box.minY, a, b),
    paperSegmentDistance(box.minX, box.maxY, a, b),
    paperSegmentDistance(box.maxX, box.maxY, a, b),
  );
}

/** The part of a stroke inside a box, as fractions along it; undefined where it passes by (Liang and Barsky). */
export function insideSpan(a: PaperPoint, b: PaperPoint, box: Bounds): readonly [number, number] | undefined {
  let [from, to] = [0, 1];
  const edges = [
    [a.x - b.x, a.x - box.minX],
    [b.x - a.x, box.maxX - a.x],
    [a.y - b.y, a.y - box.minY],
    [b.y - a.y, box.maxY - a.y],
  ] as const;
  for (const [outward, room] of edges) {
    if (outward === 0) {
      if (room < 0) return undefined;
    } else if (outward < 0) from = Math.max(from, room / outward);
    else to = Math.min(to, room / outward);
  }
  return from <= to ? [from, to] : undefined;
}
