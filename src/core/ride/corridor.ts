/** What a way between obstacles comes too near to: the walls, and pieces that it has no business with. */
import type { Arena } from '../course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, pathBounds, sampled } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import { type Bounds, boundsMeet, type Ring, ringBounds } from '../plane/ring.ts';
import { ringSegmentDistance } from '../plane/segment.ts';

/** Half the width a horse takes beside a wall: body and the rider's knee. Estimate. */
export const WALL_ROOM: Metres = 0.5;
/** A hoof passes a thing on the ground at least this far from the line: half a stance and half a hoof. Estimate. */
const HOOF_ROOM: Metres = 0.25;
/** The body passes a standing thing at least this far from the line. Estimate. */
const BODY_ROOM: Metres = 0.4;
/** Near the stations at its ends the way is the obstacle's own affair for this far. Estimate. */
const OWN: Metres = 0.9;
/** How finely the way is looked at. */
const STEP: Metres = 0.4;

export interface Surroundings {
  readonly arena: Arena;
  readonly obstacles: readonly PlacedObstacle[];
  /** Ids of the obstacles the way comes from and goes to: it may brush them, not cross their pieces. */
  readonly ends: readonly string[];
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

function room(piece: PlacedPiece, own: boolean): Metres {
  if (own) return 0.01;
  return piece.figure.stands === 'standing' ? BODY_ROOM : HOOF_ROOM;
}

function wallCost(bounds: Bounds, arena: Arena): Metres {
  const clear = Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY);
  if (clear >= WALL_ROOM) return 0;
  return clear >= 0 ? 15 * (1 - clear / WALL_ROOM) : 400 - 50 * clear;
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
export function trouble(path: Path, { arena, obstacles, ends }: Surroundings): Trouble {
  const bounds = pathBounds(path);
  let cost = wallCost(bounds, arena);
  const meets: PlacedObstacle[] = [];
  let points: readonly Point[] | undefined;
  for (const obstacle of obstacles) {
    if (!boundsMeet(obstacle.bounds, bounds, BODY_ROOM)) continue;
    const own = ends.includes(obstacle.obstacle.id);
    points ??= sampled(path, STEP);
    const skip = own ? Math.ceil(OWN / STEP) : 0;
    for (const piece of obstacle.pieces) {
      const near = room(piece, own);
      const box = boxOf(piece);
      if (!boundsMeet(box, bounds, near)) continue;
      for (let i = skip + 1; i < points.length - skip; i += 1) {
        const [a, b] = [points[i - 1], points[i]];
        if (a === undefined || b === undefined || misses(box, a, b, near)) continue;
        if (ringSegmentDistance(piece.footprint, [a, b]) > near) continue;
        cost += piece.figure.stands === 'standing' ? 80 : 40;
        if (meets.at(-1) !== obstacle) meets.push(obstacle);
        break;
      }
    }
  }
  return { cost, bounds, meets };
}
