import { type Point, TOUCH } from './point.ts';
import { type Pose, toWorld } from './pose.ts';

/** A simple closed outline, counter-clockwise, the first point not repeated at the end. */
export type Ring = readonly Point[];

/** An axis-parallel box. */
export interface Bounds {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The rectangle of the given size about the origin, long side along x. */
export function rectangle(length: number, width: number): Ring {
  const x = length / 2;
  const y = width / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}

/** Each edge of the ring, the closing one included. */
export function edges(ring: Ring): (readonly [Point, Point])[] {
  return ring.map((from, i) => [from, ring[(i + 1) % ring.length] ?? from] as const);
}

/** Square metres; positive for a counter-clockwise ring. */
export function ringArea(ring: Ring): number {
  return edges(ring).reduce((sum, [a, b]) => sum + (a.x * b.y - b.x * a.y), 0) / 2;
}

/** Whether the point is inside or on the outline. */
export function ringContains(ring: Ring, point: Point): boolean {
  let inside = false;
  let a = ring.at(-1);
  for (const b of ring) {
    if (a === undefined) return false;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const length = Math.hypot(dx, dy);
    if (length > 0) {
      const along = ((point.x - a.x) * dx + (point.y - a.y) * dy) / length;
      const aside = ((point.x - a.x) * dy - (point.y - a.y) * dx) / length;
      if (Math.abs(aside) <= TOUCH && along >= -TOUCH && along <= length + TOUCH) return true;
    }
    if (a.y > point.y !== b.y > point.y && point.x < a.x + (dx * (point.y - a.y)) / dy) inside = !inside;
    a = b;
  }
  return inside;
}

/** The smallest box around the points; an empty list has an empty box that touches nothing. */
export function ringBounds(points: readonly Point[]): Bounds {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const { x, y } of points) {
    if (x < minX) minX = x;
    if (y < minY) minY = y;
    if (x > maxX) maxX = x;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box around both. */
export function unionBounds(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY),
  };
}

/** Whether the boxes come within `margin` metres of each other, measured along the axes. */
export function boundsIntersect(a: Bounds, b: Bounds, margin = TOUCH): boolean {
  return (
    a.minX <= b.maxX + margin && b.minX <= a.maxX + margin && a.minY <= b.maxY + margin && b.minY <= a.maxY + margin
  );
}

/** A ring given in the frame, as a ring on the ground. */
export function transformRing(ring: Ring, frame: Pose): Ring {
  return ring.map((point) => toWorld(frame, point));
}
