/** What a way between obstacles comes too near to: the walls, and pieces that it has no business with. */
import type { Arena } from '../course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, pathBounds, sampled } from '../plane/path.ts';
import { between, distance, type Point } from '../plane/point.ts';
import { type Bounds, boundsMeet, type Ring, ringBounds } from '../plane/ring.ts';
import { ringSegmentDistance } from '../plane/segment.ts';

/** Half the width a horse takes beside a wall: body and the rider's knee. Estimate. */
export const WALL_ROOM: Metres = 0.5;
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
}

const boxes = new WeakMap<Ring, Bounds>();
function boxOf(piece: PlacedPiece): Bounds {
  const known = boxes.get(piece.footprint);
  if (known !== undefined) return known;
  const box = ringBounds(piece.footprint);
  boxes.set(piece.footprint, box);
  return box;
}

function room(piece: PlacedPiece): Metres {
  return piece.figure.stands === 'standing' ? BODY_ROOM : HOOF_ROOM;
}

/** Metres from an end of the way in which it may meet a piece: a horse's length for the station's, half of it beside others. */
function pardon(end: End | undefined, piece: PlacedPiece, horse: Horse): Metres {
  if (end?.obstacle !== piece.obstacle) return 0;
  return end.piece === piece.key ? horse.bodyLength.value : horse.wheelbase.value / 2;
}

/** Whether what is left of the way without its pardoned ends comes nearer to the piece than `near`. */
function meetsPiece(
  way: Sampled,
  piece: PlacedPiece,
  { near, first, last }: Record<'near' | 'first' | 'last', Metres>,
): boolean {
  const box = boxOf(piece);
  const { points, along } = way;
  const end = (along.at(-1) ?? 0) - last;
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1], points[i]];
    const [from = 0, to = 0] = [along[i - 1], along[i]];
    if (a === undefined || b === undefined || to <= first || from >= end || misses(box, a, b, near)) continue;
    const cut = (at: Metres): Point => between(a, b, (at - from) / (to - from));
    const part = [from < first ? cut(first) : a, to > end ? cut(end) : b] as const;
    if (ringSegmentDistance(piece.footprint, part) <= near) return true;
  }
  return false;
}

interface Sampled {
  readonly points: readonly Point[];
  /** Metres along the chords at each point. */
  readonly along: readonly Metres[];
}

function sampledWay(path: Path): Sampled {
  const points = sampled(path, STEP);
  let total = 0;
  const along = points.map((point, i) => {
    total += i === 0 ? 0 : distance(points[i - 1] ?? point, point);
    return total;
  });
  return { points, along };
}

function wallCost(bounds: Bounds, arena: Arena): Metres {
  const clear = Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY);
  if (clear >= WALL_ROOM) return 0;
  return clear >= 0 ? PRICE.wall * (1 - clear / WALL_ROOM) : PRICE.outside * (1 - clear);
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
  for (const obstacle of obstacles) {
    if (!boundsMeet(obstacle.bounds, bounds, BODY_ROOM)) continue;
    const own = [leaves?.obstacle, comes?.obstacle].includes(obstacle.obstacle.id);
    for (const piece of obstacle.pieces) {
      const near = room(piece);
      if (!boundsMeet(boxOf(piece), bounds, near)) continue;
      way ??= sampledWay(path);
      const ends = { first: pardon(leaves, piece, horse), last: pardon(comes, piece, horse) };
      if (!meetsPiece(way, piece, { near, ...ends })) continue;
      if (own && !meetsPiece(way, piece, { near: BRUSHED, ...ends })) {
        cost += PRICE.brushing;
        continue;
      }
      cost += piece.figure.stands === 'standing' ? PRICE.standing : PRICE.lying;
      if (meets.at(-1) !== obstacle) meets.push(obstacle);
    }
  }
  return { cost, bounds, meets };
}
