/** Whether a straight or an arc comes near to what a ring covers: exact, and without allocations, for the search's inner loop. */
import type { Metres } from '../measure/quantity.ts';
import { poseOn, type Stretch, stretchBounds } from './path.ts';
import { type Point, TOUCH } from './point.ts';
import { type Bounds, type Ring, ringContains } from './ring.ts';
import { squaredDistance } from './segment.ts';

const TURN = 2 * Math.PI;

/** A stretch with what the test needs of it, worked out once for many rings. */
export interface Reach {
  readonly stretch: Stretch;
  readonly a: Point;
  readonly b: Point;
  readonly bounds: Bounds;
  /** Absent for a straight. */
  readonly arc?: {
    readonly center: Point;
    readonly radius: Metres;
    /** The direction from the centre at which it begins, counter-clockwise, and how far it goes from there. */
    readonly first: number;
    readonly sweep: number;
  };
}

/** Whether the arc covers the direction (x, y) from its centre. */
function covers({ first, sweep }: NonNullable<Reach['arc']>, x: number, y: number): boolean {
  const past = Math.atan2(y, x) - first;
  return past - TURN * Math.floor(past / TURN) <= sweep;
}

/** The part of a stretch between two distances from its start, metres. */
export function reachOf(stretch: Stretch, from: Metres = 0, to: Metres = stretch.length): Reach {
  const { curvature } = stretch;
  const start = from === 0 ? stretch.start : poseOn(stretch, from);
  const part = { start, length: to - from, curvature };
  const [a, b] = [start, poseOn(part, part.length)];
  const bounds = stretchBounds(part);
  const turned = Math.abs(curvature) * part.length;
  if (turned < 1e-9) return { stretch: part, a, b, bounds };
  const center = { x: a.x - Math.sin(a.angle) / curvature, y: a.y + Math.cos(a.angle) / curvature };
  // Counter-clockwise from the one end or the other.
  const begin = curvature > 0 ? a : b;
  const first = Math.atan2(begin.y - center.y, begin.x - center.x);
  return {
    stretch: part,
    a,
    b,
    bounds,
    arc: { center, radius: 1 / Math.abs(curvature), first, sweep: Math.min(turned, TURN) },
  };
}

function crossProduct(a: Point, b: Point, at: Point): number {
  return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
}

function segmentNears({ a, b }: Reach, c: Point, d: Point, square: number): boolean {
  if (squaredDistance(c, a, b) <= square) return true;
  return crossProduct(a, b, c) * crossProduct(a, b, d) < 0 && crossProduct(c, d, a) * crossProduct(c, d, b) < 0;
}

/** An edge of a ring: its first corner seen from the centre of an arc, and the way to the next. */
interface Edge {
  readonly cx: number;
  readonly cy: number;
  readonly dx: number;
  readonly dy: number;
}

/** Whether the place at a fraction of an edge, seen from the centre of the arc, is on the edge and in a direction of the arc. */
function isReached(arc: NonNullable<Reach['arc']>, { cx, cy, dx, dy }: Edge, fraction: number): boolean {
  return fraction >= 0 && fraction <= 1 && covers(arc, cx + dx * fraction, cy + dy * fraction);
}

/** Beside its ends, an arc is nearest to an edge at a corner, at the foot from its centre, or where it crosses. */
function arcNears(arc: NonNullable<Reach['arc']>, c: Point, d: Point, near: Metres): boolean {
  const { center, radius } = arc;
  const cx = c.x - center.x;
  const cy = c.y - center.y;
  if (Math.abs(Math.hypot(cx, cy) - radius) <= near && covers(arc, cx, cy)) return true;
  const dx = d.x - c.x;
  const dy = d.y - c.y;
  const length = Math.hypot(dx, dy);
  if (length === 0) return false;
  const foot = -(cx * dx + cy * dy) / length;
  const far = Math.abs(cx * dy - cy * dx) / length;
  if (far > radius + near) return false;
  const edge = { cx, cy, dx, dy };
  if (far >= radius) return isReached(arc, edge, foot / length);
  const half = Math.sqrt(radius * radius - far * far);
  return isReached(arc, edge, (foot - half) / length) || isReached(arc, edge, (foot + half) / length);
}

/** Whether all corners of the ring lie on one side of the line through a straight, further from it than `near`. */
function isBesideLine({ a, b }: Reach, ring: Ring, near: Metres): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = Math.hypot(dx, dy);
  // So short a straight has no side.
  if (length < TOUCH) return false;
  const far = near * length;
  let isLeft: boolean | undefined;
  for (const { x, y } of ring) {
    const across = dx * (y - a.y) - dy * (x - a.x);
    isLeft ??= across > 0;
    if (Math.abs(across) <= far || across > 0 !== isLeft) return false;
  }
  return true;
}

/** Whether all corners of the ring lie inside an arc's circle, further from it than `near`. */
function isInsideCircle({ center, radius }: NonNullable<Reach['arc']>, ring: Ring, near: Metres): boolean {
  const most = radius - near;
  if (most <= 0) return false;
  for (const { x, y } of ring) {
    const dx = x - center.x;
    const dy = y - center.y;
    if (dx * dx + dy * dy >= most * most) return false;
  }
  return true;
}

/** Whether the stretch comes as near as `near` metres to what the ring covers. */
export function nearsRing(reach: Reach, ring: Ring, near: Metres): boolean {
  const { a, b, arc } = reach;
  // Most rings are told by one of these alone.
  if (arc === undefined ? isBesideLine(reach, ring, near) : isInsideCircle(arc, ring, near)) return false;
  const square = near * near;
  let c = ring.at(-1);
  for (const d of ring) {
    if (c === undefined) return false;
    if (squaredDistance(a, c, d) <= square || squaredDistance(b, c, d) <= square) return true;
    if (arc === undefined ? segmentNears(reach, c, d, square) : arcNears(arc, c, d, near)) return true;
    c = d;
  }
  return ringContains(ring, a);
}
