/** The way from one end to the next, as the line of travel takes it and as others weigh it. */
import type { Arena, PassedSide } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Barrier, barrier } from './barrier.ts';
import { cachedApproach, type TurnedApproach, turnedApproach, turnedQuery } from './cached-ways.ts';
import type { RouteContext, RouteEnd } from './collision-cost.ts';
import { keptWay, soughtWay } from './kept-way.ts';
import type { LegWay } from './line.ts';
import type { PassageLine } from './passage-line.ts';
import type { RouteQuery } from './plain-paths.ts';

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
  /** On which hand it leaves obstacles, where that was chosen. */
  readonly passes?: readonly PassedSide[] | undefined;
}

/** What a way has to keep clear of, and who goes it. */
export interface WaySurroundings {
  readonly arena: Arena;
  readonly horse: Horse;
  readonly obstacles: readonly PlacedObstacle[];
}

/** What a way between two ends may come near to: at its ends the pieces that it leaves and comes to are let pass. */
export function routeContext({ from, to, passes }: WayQuery, around: WaySurroundings): RouteContext {
  const { arena, horse, obstacles } = around;
  const context = { arena, horse, obstacles, fromEnd: from.end, toEnd: to.end };
  if (passes === undefined) return context;
  const reach = arena.length + arena.width;
  const barriers = passes.flatMap(({ obstacle: id, hand }): Barrier[] => {
    const obstacle = obstacles.find((each) => each.obstacle.id === id);
    // The sides of an obstacle where the way begins or ends follow from how it is ridden.
    if (obstacle === undefined || id === from.end?.obstacle || id === to.end?.obstacle) return [];
    return [barrier(obstacle, hand, { from: from.at, to: to.at, reach })];
  });
  return { ...context, barriers };
}

/** What the router is asked for a way. */
function asked(way: WayQuery, around: WaySurroundings): { query: RouteQuery; context: RouteContext } {
  const { from, to, gait, bends } = way;
  const { straightAfter } = from;
  const { straightBefore } = to;
  const query = { from: from.at, to: to.at, gait, horse: around.horse, bends, straightAfter, straightBefore };
  return { query, context: routeContext(way, around) };
}

/** The way between two ends, with the turn on the spot that begins it; cached under `owner`. */
export function wayBetween(owner: object, way: WayQuery, around: WaySurroundings): TurnedApproach {
  const { query, context } = asked(way, around);
  return way.from.backedOut
    ? turnedApproach(owner, query, context)
    : { by: 0, approach: cachedApproach(owner, query, context) };
}

/** A way with what it was asked after the turn on the spot. */
type TurnedWay = Pick<LegWay, 'by' | 'kept'>;

/** The best way between two ends, and what it was asked. */
export function soughtWayBetween(owner: object, way: WayQuery, around: WaySurroundings): TurnedWay {
  const { query, context } = asked(way, around);
  const { by, approach } = wayBetween(owner, way, around);
  return { by, kept: soughtWay({ query: turnedQuery(query, by), context, found: approach }) };
}

/** The way that keeps the turn and the side of the one before; undefined where a new one has to be sought. */
export function keptWayBetween(before: TurnedWay, way: WayQuery, around: WaySurroundings): TurnedWay | undefined {
  const { backedOut } = way.from;
  const { by } = before;
  if (by !== 0 && !backedOut) return undefined;
  const { query, context } = asked(way, around);
  const kept = keptWay(before.kept, turnedQuery(query, by), context);
  // A turn on the spot may open a way that is shut without it: it is tried when a clear way is sought again.
  const isSought = kept.searched !== before.kept.searched;
  return backedOut && isSought && kept.found.blocked !== undefined ? undefined : { by, kept };
}
