import type { Point } from './point.ts';
import { type Ring, ringArea } from './ring.ts';

/** What is left of `ring` after cutting along each edge of a convex counter-clockwise one. */
export function clippedByConvex(ring: Ring, convex: Ring): Ring {
  let left: readonly Point[] = ring;
  convex.forEach((from, i) => {
    const to = convex[(i + 1) % convex.length] ?? from;
    const inside = (p: Point): number => (to.x - from.x) * (p.y - from.y) - (to.y - from.y) * (p.x - from.x);
    left = left.flatMap((p, k) => {
      const next = left[(k + 1) % left.length] ?? p;
      const here = inside(p);
      const there = inside(next);
      const kept = here >= 0 ? [p] : [];
      if (here >= 0 === there >= 0) return kept;
      const t = here / (here - there);
      return [...kept, { x: p.x + (next.x - p.x) * t, y: p.y + (next.y - p.y) * t }];
    });
  });
  return left;
}

/** Square metres that two convex counter-clockwise rings cover both, such as two poles. */
export function convexOverlapArea(a: Ring, b: Ring): number {
  const shared = clippedByConvex(a, b);
  return shared.length < 3 ? 0 : ringArea(shared);
}
