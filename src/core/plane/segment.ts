import { type Point, TOUCH } from './point.ts';
import { edges, type Ring, ringContains } from './ring.ts';

/** A straight piece between two points. */
export type Segment = readonly [Point, Point];

/** The fraction along the segment, 0 … 1, of the place nearest to the point. */
export function nearestFraction([a, b]: Segment, point: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / square));
}

export function segmentPointDistance(segment: Segment, point: Point): number {
  const [a, b] = segment;
  const t = nearestFraction(segment, point);
  return Math.hypot(a.x + (b.x - a.x) * t - point.x, a.y + (b.y - a.y) * t - point.y);
}

/** Where two segments cross or touch; absent when they do not, or when they lie along each other. */
export function segmentIntersection([a, b]: Segment, [c, d]: Segment): Point | undefined {
  const rx = b.x - a.x;
  const ry = b.y - a.y;
  const sx = d.x - c.x;
  const sy = d.y - c.y;
  const first = Math.hypot(rx, ry);
  const second = Math.hypot(sx, sy);
  const across = rx * sy - ry * sx;
  if (Math.abs(across) <= 1e-12 * first * second) return undefined;
  const t = ((c.x - a.x) * sy - (c.y - a.y) * sx) / across;
  const u = ((c.x - a.x) * ry - (c.y - a.y) * rx) / across;
  const slackT = TOUCH / first;
  const slackU = TOUCH / second;
  if (t < -slackT || t > 1 + slackT || u < -slackU || u > 1 + slackU) return undefined;
  return { x: a.x + rx * t, y: a.y + ry * t };
}

/** The shortest distance between two segments; 0 when they cross. */
export function segmentDistance(a: Segment, b: Segment): number {
  if (segmentIntersection(a, b) !== undefined) return 0;
  return Math.min(
    segmentPointDistance(a, b[0]),
    segmentPointDistance(a, b[1]),
    segmentPointDistance(b, a[0]),
    segmentPointDistance(b, a[1]),
  );
}

/** The shortest distance from a point to what the ring covers; 0 inside. */
export function ringPointDistance(ring: Ring, point: Point): number {
  if (ringContains(ring, point)) return 0;
  return Math.min(...edges(ring).map((edge) => segmentPointDistance(edge, point)));
}

/** The shortest distance from a segment to what the ring covers; 0 when they meet. */
export function ringSegmentDistance(ring: Ring, segment: Segment): number {
  if (ringContains(ring, segment[0])) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const edge of edges(ring)) {
    least = Math.min(least, segmentDistance(edge, segment));
    if (least === 0) break;
  }
  return least;
}

/** The shortest distance between what two rings cover; 0 when they overlap or touch. */
export function ringDistance(a: Ring, b: Ring): number {
  const [first] = b;
  if (first === undefined || a.length === 0) return Number.POSITIVE_INFINITY;
  const [corner] = a;
  if (ringContains(a, first) || (corner !== undefined && ringContains(b, corner))) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (const edge of edges(b)) {
    for (const other of edges(a)) least = Math.min(least, segmentDistance(other, edge));
  }
  return least;
}

/**
 * The square of the distance from a point to the segment from a to b: without the root, for the inner loop of the
 * search.
 */
export function squaredDistance(at: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((at.x - a.x) * dx + (at.y - a.y) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  const x = a.x + t * dx - at.x;
  const y = a.y + t * dy - at.y;
  return x * x + y * y;
}
