/** What a way between obstacles comes too near to: the walls, and pieces that do not belong to its two ends. */

import type { Arena } from '../course/course.ts';
import { type PlacedObstacle, type PlacedPiece, pieceBounds } from '../course/placed.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, pathBounds, pathEnd, poseOn } from '../plane/path.ts';
import { distance, lerp, type Point } from '../plane/point.ts';
import { type Bounds, boundsIntersect, type Ring, ringContains } from '../plane/ring.ts';
import { squaredDistance } from '../plane/segment.ts';

/** Half the width a horse takes beside a wall: body and the rider's knee. Estimate. */
const WALL_CLEARANCE: Metres = 0.5;
/** A hoof passes a thing on the ground at least this far from the line: half a stance and half a hoof. Estimate. */
const HOOF_CLEARANCE: Metres = 0.25;
/** The body passes a standing thing at least this far from the line. Estimate. */
const BODY_CLEARANCE: Metres = 0.4;
/**
 * The pieces of the obstacles at its two ends may be passed closely but not crossed: nearer than this is on them,
 * metres.
 */
const BRUSHED: Metres = 0.01;
/**
 * Penalties in metres of way: passing a piece of one's own obstacle too closely, coming near the wall, stepping on what
 * lies in the way, going through what stands there, or leaving the arena (for each metre outside, and once). Estimates.
 */
const PENALTY = { brushing: 4, wall: 15, lying: 40, standing: 80, outside: 400 };
/** Step of the samples along the way, metres. */
const CHORD_LENGTH: Metres = 0.4;

export interface RouteContext {
  readonly arena: Arena;
  readonly obstacles: readonly PlacedObstacle[];
  readonly horse: Horse;
  /** The two ends of a way: near them the horse may be over the one piece and beside the others. */
  readonly fromEnd: RouteEnd | undefined;
  readonly toEnd: RouteEnd | undefined;
}

/** An obstacle by id, and the piece of its first or last station by key. */
export interface RouteEnd {
  readonly obstacle: string;
  readonly piece: string;
}

export interface PathCost {
  /** The penalty, in metres of way. */
  readonly penalty: Metres;
  readonly bounds: Bounds;
  /** The obstacles whose pieces it meets. */
  readonly hits: readonly PlacedObstacle[];
  /** The first piece that it meets. */
  readonly piece: PlacedPiece | undefined;
  /** Whether it leaves the arena. */
  readonly leavesArena: boolean;
}

/** The clearance that the line of a way keeps from a piece, metres. */
export function pieceClearance(piece: PlacedPiece): Metres {
  return piece.figure.stands === 'standing' ? BODY_CLEARANCE : HOOF_CLEARANCE;
}

/** Metres from an end of the way in which it may meet a piece: a horse's length for the station's, half of it beside others. */
function exemptLength(end: RouteEnd | undefined, piece: PlacedPiece, horse: Horse): Metres {
  if (end?.obstacle !== piece.obstacle) return 0;
  return end.piece === piece.key ? horse.bodyLength.value : horse.wheelbase.value / 2;
}

function crossProduct(a: Point, b: Point, at: Point): number {
  return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
}

/** What a piece covers, and the box around it. */
interface Covered {
  readonly ring: Ring;
  readonly bounds: Bounds;
}

/**
 * Whether a chord comes as near as `near` to what the ring covers. Asked for every chord of every candidate, so it
 * allocates nothing.
 */
function comesNear({ ring, bounds }: Covered, [a, b]: readonly [Point, Point], near: Metres): boolean {
  const most = near * near;
  let c = ring.at(-1);
  for (const d of ring) {
    if (c === undefined) return false;
    if (squaredDistance(a, c, d) <= most || squaredDistance(b, c, d) <= most) return true;
    if (squaredDistance(c, a, b) <= most || squaredDistance(d, a, b) <= most) return true;
    const crosses =
      crossProduct(a, b, c) * crossProduct(a, b, d) < 0 && crossProduct(c, d, a) * crossProduct(c, d, b) < 0;
    if (crosses) return true;
    c = d;
  }
  return a.x >= bounds.minX && a.x <= bounds.maxX && a.y >= bounds.minY && a.y <= bounds.maxY && ringContains(ring, a);
}

/** Whether the way, without the lengths at its ends that are exempt, comes nearer to the piece than `near`. */
function hitsPiece(
  { points, along }: SampledPath,
  piece: PlacedPiece,
  { near, first, last }: Record<'near' | 'first' | 'last', Metres>,
): boolean {
  const bounds = pieceBounds(piece);
  const covered = { ring: piece.footprint, bounds };
  const end = (along.at(-1) ?? 0) - last;
  for (let i = 1; i < points.length; i += 1) {
    const a = points[i - 1];
    const b = points[i];
    const from = along[i - 1] ?? 0;
    const to = along[i] ?? 0;
    if (a === undefined || b === undefined || to <= first || from >= end || misses(bounds, a, b, near)) continue;
    const begins = from < first ? lerp(a, b, (first - from) / (to - from)) : a;
    const ends = to > end ? lerp(a, b, (end - from) / (to - from)) : b;
    if (comesNear(covered, [begins, ends], near)) return true;
  }
  return false;
}

interface SampledPath {
  readonly points: readonly Point[];
  /** Metres along the chords at each point. */
  readonly along: readonly Metres[];
}

/** The way in chords: one for a straight, several for an arc. */
function sampledPath(path: Path): SampledPath {
  const points: Point[] = [];
  const along: Metres[] = [];
  let total = 0;
  const take = (at: Point): void => {
    const before = points.at(-1);
    if (before !== undefined) total += distance(before, at);
    points.push(at);
    along.push(total);
  };
  for (const stretch of path) {
    const pieces = stretch.curvature === 0 ? 1 : Math.max(1, Math.ceil(stretch.length / CHORD_LENGTH));
    for (let i = 0; i < pieces; i += 1) take(poseOn(stretch, (stretch.length * i) / pieces));
  }
  if (path.length > 0) take(pathEnd(path));
  return { points, along };
}

function wallPenalty(bounds: Bounds, arena: Arena): Metres {
  const clear = Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY);
  if (clear >= WALL_CLEARANCE) return 0;
  return clear >= 0 ? PENALTY.wall * (1 - clear / WALL_CLEARANCE) : PENALTY.outside * (1 - clear);
}

function isOutside(bounds: Bounds, arena: Arena): boolean {
  return Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY) < 0;
}

/** Whether the segment from `a` to `b` stays further than `near` from the box along an axis. */
function misses(bounds: Bounds, a: Point, b: Point, near: Metres): boolean {
  return (
    (a.x < bounds.minX - near && b.x < bounds.minX - near) ||
    (a.x > bounds.maxX + near && b.x > bounds.maxX + near) ||
    (a.y < bounds.minY - near && b.y < bounds.minY - near) ||
    (a.y > bounds.maxY + near && b.y > bounds.maxY + near)
  );
}

/** The collision cost of a way; 0 is collision-free. */
export function pathCost(path: Path, { arena, obstacles, horse, fromEnd, toEnd }: RouteContext): PathCost {
  const bounds = pathBounds(path);
  let penalty = wallPenalty(bounds, arena);
  const hits: PlacedObstacle[] = [];
  let sampled: SampledPath | undefined;
  let first: PlacedPiece | undefined;
  for (const obstacle of obstacles) {
    if (!boundsIntersect(obstacle.bounds, bounds, BODY_CLEARANCE)) continue;
    const own = [fromEnd?.obstacle, toEnd?.obstacle].includes(obstacle.obstacle.id);
    for (const piece of obstacle.pieces) {
      const near = pieceClearance(piece);
      if (!boundsIntersect(pieceBounds(piece), bounds, near)) continue;
      sampled ??= sampledPath(path);
      const ends = { first: exemptLength(fromEnd, piece, horse), last: exemptLength(toEnd, piece, horse) };
      if (!hitsPiece(sampled, piece, { near, ...ends })) continue;
      if (own && !hitsPiece(sampled, piece, { near: BRUSHED, ...ends })) {
        penalty += PENALTY.brushing;
        continue;
      }
      penalty += piece.figure.stands === 'standing' ? PENALTY.standing : PENALTY.lying;
      first ??= piece;
      if (hits.at(-1) !== obstacle) hits.push(obstacle);
    }
  }
  const leavesArena = isOutside(bounds, arena);
  return { penalty, bounds, hits, piece: first, leavesArena };
}
