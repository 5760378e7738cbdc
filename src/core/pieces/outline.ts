/** Shapes and strokes that several pieces draw with, in a piece's own frame. */
import type { Ink, Mark } from '../plane/mark.ts';
import type { Point } from '../plane/point.ts';
import type { Ring } from '../plane/ring.ts';

/** The axis-parallel box between two corners. */
export function rectangleBetween(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** A circle as a ring whose corners lie on it: 32 of them come within half a percent of the radius. */
export function circleRing(radius: number, at: Point = { x: 0, y: 0 }, corners = 32): Ring {
  return Array.from({ length: corners }, (_, i) => {
    const angle = (2 * Math.PI * i) / corners;
    return { x: at.x + radius * Math.cos(angle), y: at.y + radius * Math.sin(angle) };
  });
}

/** Points along an arc about `at`, both ends included. */
export function arc(at: Point, radius: number, [from, to]: readonly [number, number], steps = 12): Point[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return { x: at.x + radius * Math.cos(angle), y: at.y + radius * Math.sin(angle) };
  });
}

export function area(ring: Ring, ink: Ink): Mark {
  return { kind: 'area', ring, ink };
}

/** A hairline round a ring. */
export function edge(ring: Ring, ink: Ink = 'outline'): Mark {
  return { kind: 'line', points: ring.concat(ring.slice(0, 1)), ink };
}

export function stroke(points: readonly Point[], ink: Ink = 'outline'): Mark {
  return { kind: 'line', points, ink };
}
