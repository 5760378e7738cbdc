/**
 * plane/ has plane geometry: points, poses, segments, arcs, rings, paths. It knows no horse and no pole. Touching
 * counts as inside everywhere, within `TOUCH`.
 */
import type { Metres } from '../measure/quantity.ts';

/** Where a point lives: on the ground in metres, on paper in millimetres, on the screen in pixels. */
export type CoordinateSpace = 'ground' | 'paper' | 'screen';

export interface Point<W extends CoordinateSpace = 'ground'> {
  readonly x: number;
  readonly y: number;
  readonly space?: W;
}

/** Two boundaries nearer than this touch, metres. The only geometric tolerance of the program. */
export const TOUCH: Metres = 1e-6;

export function point(x: number, y: number): Point {
  return { x, y };
}

export function distance<W extends CoordinateSpace>(a: Point<W>, b: Point<W>): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** The point the fraction `t` of the way from `a` to `b`. */
export function lerp(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}
