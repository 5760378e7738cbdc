import type { Point } from './point.ts';
import type { Ring } from './ring.ts';

function orientation(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** One side of the hull of points that run along x: only what bends to the left stays. */
function side(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    for (let n = kept.length; n >= 2; n = kept.length) {
      const [a, b] = [kept[n - 2], kept[n - 1]];
      if (a === undefined || b === undefined || orientation(a, b, point) > 0) break;
      kept.pop();
    }
    kept.push(point);
  }
  return kept.slice(0, -1);
}

/** The smallest convex ring around the points, counter-clockwise; without area where they lie in one line. */
export function hull(points: readonly Point[]): Ring {
  const along = points.toSorted((a, b) => a.x - b.x || a.y - b.y);
  return [...side(along), ...side(along.toReversed())];
}
