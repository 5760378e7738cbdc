import type { Point } from './point.ts';

/** Three points whose triangle has less than half of this area lie in one line, square metres. */
const FLAT = 1e-9;

/** Twice the signed area of a triangle: positive when a, b, c turn to the left. */
function orientation(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** One side of the hull of points that run along x: only what bends to the left stays. */
function chain<Vertex extends Point>(points: readonly Vertex[]): readonly Vertex[] {
  const kept: Vertex[] = [];
  for (const point of points) {
    for (let n = kept.length; n >= 2; n = kept.length) {
      const [a, b] = [kept[n - 2], kept[n - 1]];
      if (a === undefined || b === undefined || orientation(a, b, point) > FLAT) break;
      kept.pop();
    }
    kept.push(point);
  }
  return kept.slice(0, -1);
}

/**
 * The corners of the convex hull, counter-clockwise, with all that they carry (Andrew's monotone chain, 1979). Points in one
 * line have a hull without area.
 */
export function hull<Vertex extends Point>(points: readonly Vertex[]): readonly Vertex[] {
  const along = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  return [...chain(along), ...chain(along.toReversed())];
}
