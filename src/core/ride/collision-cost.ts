/** What a way between obstacles comes too near to: the walls, and pieces; those of its two ends too, once it is off them. */

import type { Arena } from '../course/course.ts';
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, pathLength } from '../plane/path.ts';
import { type Bounds, boundsIntersect, unionBounds } from '../plane/ring.ts';
import { nearsRing, type Reach, reachOf } from '../plane/stretch-distance.ts';
import type { Barrier } from './barrier.ts';
import { LARGEST_CLEARANCE, pieceClearance } from './clearance.ts';
import { addTested, type TestedPaths } from './tested-paths.ts';

/** Half the width a horse takes beside a wall: body and the rider's knee. Estimate. */
const WALL_CLEARANCE: Metres = 0.5;
/**
 * Penalties in metres of way: coming near the wall, stepping on what lies in the way, going through what stands there,
 * or leaving the arena (for each metre outside, and once). Estimates.
 */
const PENALTY = { wall: 15, lying: 40, standing: 80, outside: 400 };

const NO_BARRIERS: readonly Barrier[] = [];

export interface RouteContext {
  readonly arena: Arena;
  readonly obstacles: readonly PlacedObstacle[];
  readonly horse: Horse;
  /** The two ends of a way: near them the horse may be over the one piece and beside the others. */
  readonly fromEnd: RouteEnd | undefined;
  readonly toEnd: RouteEnd | undefined;
  /** What may not be crossed, so that the way has the sides that were chosen. */
  readonly barriers?: readonly Barrier[];
  /** Where each path that is looked at is noted. */
  readonly tested?: TestedPaths | undefined;
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

/** Metres from an end of the way in which it may meet a piece: a horse's length for the station's, half of it beside others. */
function exemptLength(end: RouteEnd | undefined, piece: PlacedPiece, horse: Horse): Metres {
  if (end?.obstacle !== piece.obstacle) return 0;
  return end.piece === piece.key ? horse.bodyLength.value : horse.wheelbase.value / 2;
}

/** A way as stretches that can be held against pieces, each with its distance from the beginning. */
interface PathReach {
  readonly reaches: readonly Reach[];
  readonly length: Metres;
  readonly bounds: Bounds;
}

function pathReach(path: Path): PathReach {
  const reaches = path.map((stretch) => reachOf(stretch));
  const bounds = reaches.map((each) => each.bounds).reduce(unionBounds);
  return { reaches, length: pathLength(path), bounds };
}

/** Whether the way, without the lengths at its ends that are exempt, comes nearer to the piece than `near`. */
function hitsPiece(
  { reaches, length }: PathReach,
  piece: PlacedPiece,
  { near, first, last }: Record<'near' | 'first' | 'last', Metres>,
): boolean {
  const end = length - last;
  if (first > end) return false;
  let from = 0;
  for (const whole of reaches) {
    const { stretch } = whole;
    const to = from + stretch.length;
    if (to >= first && from <= end && boundsIntersect(piece.bounds, whole.bounds, near)) {
      const isWhole = from >= first && to <= end;
      const part = isWhole ? whole : reachOf(stretch, Math.max(0, first - from), Math.min(stretch.length, end - from));
      if (nearsRing(part, piece.footprint, near)) return true;
    }
    from = to;
  }
  return false;
}

function wallPenalty(bounds: Bounds, arena: Arena): Metres {
  const clear = Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY);
  if (clear >= WALL_CLEARANCE) return 0;
  return clear >= 0 ? PENALTY.wall * (1 - clear / WALL_CLEARANCE) : PENALTY.outside * (1 - clear);
}

function isOutside(bounds: Bounds, arena: Arena): boolean {
  return Math.min(bounds.minX, bounds.minY, arena.length - bounds.maxX, arena.width - bounds.maxY) < 0;
}

/**
 * The collision cost of a way; 0 is collision-free. What is held `among` some obstacles only is not noted: it is a part of
 * a path that was.
 */
export function pathCost(path: Path, context: RouteContext, among?: readonly PlacedObstacle[]): PathCost {
  const { arena, obstacles, horse, fromEnd, toEnd, barriers = NO_BARRIERS, tested } = context;
  const way = pathReach(path);
  const { bounds } = way;
  if (tested !== undefined && among === undefined) addTested(tested, path, bounds);
  let penalty = wallPenalty(bounds, arena);
  const hits: PlacedObstacle[] = [];
  let first: PlacedPiece | undefined;
  for (const obstacle of among ?? obstacles) {
    if (!boundsIntersect(obstacle.bounds, bounds, LARGEST_CLEARANCE)) continue;
    for (const piece of obstacle.pieces) {
      const near = pieceClearance(piece);
      if (!boundsIntersect(piece.bounds, bounds, near)) continue;
      const ends = { first: exemptLength(fromEnd, piece, horse), last: exemptLength(toEnd, piece, horse) };
      if (!hitsPiece(way, piece, { near, ...ends })) continue;
      penalty += piece.figure.stands === 'standing' ? PENALTY.standing : PENALTY.lying;
      first ??= piece;
      if (hits.at(-1) !== obstacle) hits.push(obstacle);
    }
  }
  for (const { obstacle, wall } of barriers) {
    if (!way.reaches.some((reach) => nearsRing(reach, wall, 0))) continue;
    penalty += PENALTY.standing;
    first ??= obstacle.pieces[0];
    if (!hits.includes(obstacle)) hits.push(obstacle);
  }
  const leavesArena = isOutside(bounds, arena);
  return { penalty, bounds, hits, piece: first, leavesArena };
}
