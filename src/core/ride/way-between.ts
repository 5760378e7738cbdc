/** The way from one end to the next, as the line of travel takes it and as others weigh it. */
import type { Arena } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { cachedApproach, type TurnedApproach, turnedApproach } from './cached-ways.ts';
import type { RouteContext, RouteEnd } from './collision-cost.ts';
import type { PassageLine } from './passage-line.ts';

/** Where the horse leaves an obstacle or the start, and how. */
export interface Departure {
  readonly at: Pose;
  /** Whether it left over a pole, and wants to be straight before it turns. */
  readonly straightAfter: boolean;
  /** Whether it backed out, and faces what it backed out of. */
  readonly backedOut: boolean;
  /** Absent: it leaves no obstacle. */
  readonly end: RouteEnd | undefined;
}

/** Where the horse comes in to an obstacle or to the end, and how. */
export interface Arrival {
  readonly at: Pose;
  /** Whether it comes in over a pole, and wants to be straight before it. */
  readonly straightBefore: boolean;
  /** Absent: it comes to no obstacle. */
  readonly end: RouteEnd | undefined;
}

export function departureAtStart(at: Pose): Departure {
  return { at, straightAfter: false, backedOut: false, end: undefined };
}

export function arrivalAtEnd(at: Pose): Arrival {
  return { at, straightBefore: false, end: undefined };
}

export function departureFrom(obstacle: string, line: PassageLine): Departure {
  const backedOut = line.elements.at(-1)?.move === 'back';
  return { at: line.end, straightAfter: line.leavesOver, backedOut, end: { obstacle, piece: line.lastPiece } };
}

export function arrivalAt(obstacle: string, line: PassageLine): Arrival {
  return { at: line.start, straightBefore: line.entersOver, end: { obstacle, piece: line.firstPiece } };
}

/** A way to be sought: its two ends, the gait, and the bends that it is pulled through. */
export interface WayQuery {
  readonly from: Departure;
  readonly to: Arrival;
  readonly gait: Gait;
  readonly bends: readonly Point[];
}

/** What a way has to keep clear of, and who goes it. */
export interface WaySurroundings {
  readonly arena: Arena;
  readonly horse: Horse;
  readonly obstacles: readonly PlacedObstacle[];
}

/** What a way between two ends may come near to: at its ends the pieces that it leaves and comes to are let pass. */
export function routeContext({ from, to }: WayQuery, { arena, horse, obstacles }: WaySurroundings): RouteContext {
  return { arena, horse, obstacles, fromEnd: from.end, toEnd: to.end };
}

/** The way between two ends, with the turn on the spot that begins it; cached under `owner`. */
export function wayBetween(owner: object, way: WayQuery, around: WaySurroundings): TurnedApproach {
  const { from, to, gait, bends } = way;
  const { straightAfter } = from;
  const { straightBefore } = to;
  const query = { from: from.at, to: to.at, gait, horse: around.horse, bends, straightAfter, straightBefore };
  const context = routeContext(way, around);
  return from.backedOut
    ? turnedApproach(owner, query, context)
    : { by: 0, approach: cachedApproach(owner, query, context) };
}
