/** What a way between obstacles comes too near to: the walls, and pieces that it has no business with. */
import type { Arena } from '../course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, pathBounds, pathEnd, poseOn } from '../plane/path.ts';
import { between, distance, type Point } from '../plane/point.ts';
import { type Bounds, boundsMeet, type Ring, ringBounds, ringHolds } from '../plane/ring.ts';

/** Half the width a horse takes beside a wall: body and the rider's knee. Estimate. */
const WALL_ROOM: Metres = 0.5;
/** A hoof passes a thing on the ground at least this far from the line: half a stance and half a hoof. Estimate. */
const HOOF_ROOM: Metres = 0.25;
/** The body passes a standing thing at least this far from the line. Estimate. */
const BODY_ROOM: Metres = 0.4;
/** Pieces of the obstacles at its ends may be brushed, not crossed: nearer than this is on them. */
const BRUSHED: Metres = 0.01;
/**
 * How many metres of additional way are ridden sooner than to brush a piece of one's own obstacle, come to touch the wall,
 * step on what lies in the way, go through what stands there, or leave the arena (for each metre outside, and one). Estimates.
 */
const PRICE = { brushing: 4, wall: 15, lying: 40, standing: 80, outside: 400 };
/** How finely the way is looked at. */
const STEP: Metres = 0.4;

export interface Surroundings {
  readonly arena: Arena;
  readonly obstacles: readonly PlacedObstacle[];
  readonly horse: Horse;
  /** What the way comes from and goes to: near it the horse is over the one piece and beside the others. */
  readonly leaves: End | undefined;
  readonly comes: End | undefined;
}

/** An obstacle by id, and the piece of its first or last station by key. */
export interface End {
  readonly obstacle: string;
  readonly piece: string;
}

export interface Trouble {
  /** Metres of additional way that would be ridden sooner than this. */
  readonly cost: Metres;
  readonly bounds: Bounds;
  /** The obstacles whose pieces it meets. */
  readonly meets: readonly PlacedObstacle[];
  /** The first piece that it meets. */
  readonly piece: PlacedPiece | undefined;
  /** Whether it leaves the arena. */
  readonly outside: boolean;
}

const boxes = new WeakMap<Ring, Bounds>();
function boxOf(piece: PlacedPiece): Bounds {
  const known = boxes.get(piece.footprint);
  if (known !== undefined) return known;
  const box = ringBounds(piece.footprint);
  boxes.set(piece.footprint, box);
  return box;
}

/** How far from a piece the line of a way that has no business with it keeps. */
export function pieceRoom(piece: PlacedPiece): Metres {
  return piece.figure.stands === 'standing' ? BODY_ROOM : HOOF_ROOM;
}

/** Metres from an end of the way in which it may meet a piece: a horse's length for the station's, half of it beside others. */
function pardon(end: End | undefined, piece: PlacedPiece, horse: Horse): Metres {
  if (end?.obstacle !== piece.obstacle) return 0;
  return end.piece === piece.key ? horse.bodyLength.value : horse.wheelbase.value / 2;
}

/** Square of the distance from a point to the segment from a to b. */
function squareTo(at: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((at.x - a.x) * dx + (at.y - a.y) * dy) / square;
  const t = Math.min(1, Math.max(0, along));
  const x = a.x + t * dx - at.x;
  const y = a.y + t * dy - at.y;
  return x * x + y * y;
}

function across(a: Point, b: Point, at: Point): number {
  return (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
}

/** What a piece covers, and the box around it. */
interface Covered {
  readonly ring: Ring;
  readonly box: Bounds;
}

/** Whether a chord comes as near as `near` to what the ring covers. Asked of every chord of every way tried: no lists are made. */
function comesNear({ ring, box }: Covered, [a, b]: readonly [Point, Point], near: Metres): boolean {
  const most = near * near;
  let c = ring.at(-1);
  for (const d of ring) {
    if (c === undefined) return false;
    if (squareTo(a, c, d) <= most || squareTo(b, c, d) <= most) return true;
    if (squareTo(c, a, b) <= most || squareTo(d, a, b) <= most) return true;
    const crosses = across(a, b, c) * across(a, b, d) < 0 && across(c, d, a) * across(c, d, b) < 0;
    if (crosses) return true;
    c = d;
  }
  return a.x >= box.minX && a.x <= box.maxX && a.y >= box.minY && a.y <= box.maxY && ringHolds(ring, a);
}

/** Whether what is left of the way without its pardoned ends comes nearer to the piece than `near`. */
function meetsPiece(
  { points, along }: Sampled,
  piece: PlacedPiece,
  { near, first, last }: Record<'near' | 'first' | 'last', Metres>,
): boolean {
  const box = boxOf(piece);
  const covered = { ring: piece.footprint, box };
  const end = (along.at(-1) ?? 0) - last;
  for (let i = 1; i < points.length; i += 1) {
    const a = points[i - 1];
    const b = points[i];
    const from = along[i - 1] ?? 0;
    const to = along[i] ?? 0;
    if (a === undefined || b === undefined || to <= first || from >= end || misses(box, a, b, near)) continue;
    const begins = from < first ? between(a, b, (first - from) / (to - from)) : a;
    const ends = to > end ? between(a, b, (end - from) / (to - from)) : b;
    if (comesNear(covered, [begins, ends], near)) return true;
  }
  return false;
}

interface Sampled {
  readonly points: readonly Point[];
  /** Metres along the chords at each point. */
  readonly along: readonly Metres[];
}

/** The way in chords: a straight is one, an arc several. */
function sampledWay(path: Path): Sampled {
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
    const pieces = stretch.curvature === 0 ? 1 : Math.max(1, Math.ceil(stretch.length / STEP));
    for (let i = 0; i < pieces; i += 1) take(poseOn(stretch, (stretch.length * i) / pieces));
  }
  if (path.length > 0) take(pathEnd(path));
  return { points, along };
}

function wallCost(bounds: Bounds, arena: Arena): Metres {
  const clear = Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY);
  if (clear >= WALL_ROOM) return 0;
  return clear >= 0 ? PRICE.wall * (1 - clear / WALL_ROOM) : PRICE.outside * (1 - clear);
}

function leavesArena(bounds: Bounds, arena: Arena): boolean {
  return Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY) < 0;
}

/** Whether the segment from `a` to `b` stays further than `near` from the box along an axis. */
function misses(box: Bounds, a: Point, b: Point, near: Metres): boolean {
  return (
    (a.x < box.minX - near && b.x < box.minX - near) ||
    (a.x > box.maxX + near && b.x > box.maxX + near) ||
    (a.y < box.minY - near && b.y < box.minY - near) ||
    (a.y > box.maxY + near && b.y > box.maxY + near)
  );
}

/** How much the way is in trouble; 0 is clean. */
export function trouble(path: Path, { arena, obstacles, horse, leaves, comes }: Surroundings): Trouble {
  const bounds = pathBounds(path);
  let cost = wallCost(bounds, arena);
  const meets: PlacedObstacle[] = [];
  let way: Sampled | undefined;
  let first: PlacedPiece | undefined;
  for (const obstacle of obstacles) {
    if (!boundsMeet(obstacle.bounds, bounds, BODY_ROOM)) continue;
    const own = [leaves?.obstacle, comes?.obstacle].includes(obstacle.obstacle.id);
    for (const piece of obstacle.pieces) {
      const near = pieceRoom(piece);
      if (!boundsMeet(boxOf(piece), bounds, near)) continue;
      way ??= sampledWay(path);
      const ends = { first: pardon(leaves, piece, horse), last: pardon(comes, piece, horse) };
      if (!meetsPiece(way, piece, { near, ...ends })) continue;
      if (own && !meetsPiece(way, piece, { near: BRUSHED, ...ends })) {
        cost += PRICE.brushing;
        continue;
      }
      cost += piece.figure.stands === 'standing' ? PRICE.standing : PRICE.lying;
      first ??= piece;
      if (meets.at(-1) !== obstacle) meets.push(obstacle);
    }
  }
  const outside = leavesArena(bounds, arena);
  return { cost, bounds, meets, piece: first, outside };
}
