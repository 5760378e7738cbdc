import polygonClipping from 'polygon-clipping';
import { INCH } from '../measure/quantity.ts';
import { clippedByConvex } from './convex-clip.ts';
import type { Point } from './point.ts';
import { boundsIntersect, type Ring, ringArea, ringBounds } from './ring.ts';

/**
 * Outlines are snapped to 1/1024 inch before clipping. The grid is a power of two of an inch, so that snapped
 * coordinates (in grid steps, whole numbers) are exact: the clipping package fails on nearly shared edges otherwise.
 */
const GRID = INCH / 1024;

function gridPoints(ring: Ring): [number, number][] {
  return ring.map(({ x, y }) => [Math.round(x / GRID), Math.round(y / GRID)]);
}

/** What both rings cover, as rings without holes; empty when they only touch or are apart. Promises not to throw. */
export function intersection(a: Ring, b: Ring): Ring[] {
  if (a.length < 3 || b.length < 3 || !boundsIntersect(ringBounds(a), ringBounds(b))) return [];
  try {
    const shared = polygonClipping.intersection([gridPoints(a)], [gridPoints(b)]);
    return shared
      .map(([outline = []]) => outline.slice(0, -1).map(([x, y]): Point => ({ x: x * GRID, y: y * GRID })))
      .filter((ring) => ringArea(ring) > GRID * GRID);
  } catch {
    // Not seen with snapped outlines (measured over 17 000 pairs); clipping against a convex ring needs no package.
    const ring = clippedByConvex(a, b);
    return ring.length >= 3 && ringArea(ring) > GRID * GRID ? [ring] : [];
  }
}

/** Square metres that both rings cover. */
export function overlapArea(a: Ring, b: Ring): number {
  return intersection(a, b).reduce((sum, ring) => sum + ringArea(ring), 0);
}

type Polygons = readonly [number, number][][][];

/** One half with the other, so that each outline meets few others. */
function union(polygons: Polygons): Polygons {
  if (polygons.length < 2) return polygons;
  const middle = polygons.length >> 1;
  const [a, b] = [union(polygons.slice(0, middle)), union(polygons.slice(middle))];
  try {
    return polygonClipping.union([...a], [...b]).map((polygon) => polygon.map((each) => each.map(rounded)));
  } catch {
    // Seen with rings that are almost the same: then both stay as they are, one over the other.
    return [...a, ...b];
  }
}

/** The outlines of what the rings cover together; holes in it are filled. Promises not to throw. */
export function unionRings(rings: readonly Ring[]): Ring[] {
  const polygons = rings.filter((ring) => ring.length >= 3).map((ring) => [gridPoints(ring)]);
  return union(polygons).map(([outline = []]) => {
    return withoutClosingPoint(outline).map(([x, y]): Point => ({ x: x * GRID, y: y * GRID }));
  });
}

/** What the package joined is closed by its first corner again. */
function withoutClosingPoint(outline: readonly [number, number][]): readonly [number, number][] {
  const [first, last] = [outline[0], outline.at(-1)];
  return first !== undefined && last !== undefined && first[0] === last[0] && first[1] === last[1]
    ? outline.slice(0, -1)
    : outline;
}

function rounded([x, y]: [number, number]): [number, number] {
  return [Math.round(x), Math.round(y)];
}
