/** The go, put together: approach and obstacle, leg by leg, along one line. Remembers what did not change. */
import type { Arena, Layout, Leg, Ride } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import { type Gait, type Horse, speed } from '../horses/horse.ts';
import type { Metres, Seconds } from '../measure/quantity.ts';
import { type Path, pathLength } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { boundsIntersect } from '../plane/ring.ts';
import { type Approach, approach, type Blockage, type RouteQuery } from './approach.ts';
import { allowance, goingOf } from './clock.ts';
import type { RouteContext, RouteEnd } from './collision-cost.ts';
import { leadNotes, leadStretches } from './leads.ts';
import type { Crossing, Gap, Going, Line, LineElement, RideBreak } from './line.ts';
import { type PassageLine, passageLine } from './passage-line.ts';
import { shownGaits } from './shown.ts';
import { transitionsOn } from './transitions.ts';

/** What a line of travel is worked out from. */
export interface LineInputs {
  readonly arena: Arena;
  readonly horse: Horse;
  readonly layout: Layout;
  /** The layout's obstacles, in its order. */
  readonly obstacles: readonly PlacedObstacle[];
}

/** Wider than anything a way keeps clear of, so that what changes beyond it cannot matter. */
const WATCH_MARGIN: Metres = 0.6;

interface CachedApproach {
  readonly query: RouteQuery;
  readonly context: RouteContext;
  readonly approach: Approach;
}
const approachCache = new WeakMap<object, CachedApproach>();

function samePose(a: Pose, b: Pose): boolean {
  return a.x === b.x && a.y === b.y && a.angle === b.angle;
}

function isSameQuery(a: RouteQuery, b: RouteQuery): boolean {
  return (
    samePose(a.from, b.from) &&
    samePose(a.to, b.to) &&
    a.gait === b.gait &&
    a.horse === b.horse &&
    a.bends === b.bends &&
    a.straightAfter === b.straightAfter &&
    a.straightBefore === b.straightBefore
  );
}

/** Whether nothing within the box that was looked at has come, gone or changed. */
function isUnaffected({ context: before, approach: { exploredBounds } }: CachedApproach, now: RouteContext): boolean {
  if (before.arena !== now.arena || before.horse !== now.horse) return false;
  if (before.fromEnd?.piece !== now.fromEnd?.piece || before.toEnd?.piece !== now.toEnd?.piece) return false;
  if (before.obstacles === now.obstacles) return true;
  const old = new Set(before.obstacles);
  const present = new Set(now.obstacles);
  const changed = [
    ...before.obstacles.filter((each) => !present.has(each)),
    ...now.obstacles.filter((each) => !old.has(each)),
  ];
  return !changed.some(({ bounds }) => boundsIntersect(bounds, exploredBounds, WATCH_MARGIN));
}

/** The way for a leg, taken from the last time when nothing that it depends on has changed. */
function cachedApproach(owner: object, query: RouteQuery, context: RouteContext): Approach {
  const cached = approachCache.get(owner);
  if (cached !== undefined && isSameQuery(cached.query, query) && isUnaffected(cached, context)) {
    approachCache.set(owner, { ...cached, context });
    return cached.approach;
  }
  const found = approach(query, context);
  approachCache.set(owner, { query, context, approach: found });
  return found;
}

interface CachedPassage {
  readonly passage: string;
  readonly gait: Gait;
  readonly horse: Horse;
  readonly line: PassageLine | undefined;
}
const passageCache = new WeakMap<PlacedObstacle, CachedPassage[]>();

/** The line over an obstacle, remembered as long as the obstacle is the same object. */
function cachedPassage(obstacle: PlacedObstacle, leg: Leg, horse: Horse): PassageLine | undefined {
  const cached = passageCache.get(obstacle) ?? [];
  const same = cached.find((each) => each.passage === leg.passage && each.gait === leg.gait && each.horse === horse);
  if (same !== undefined) return same.line;
  const passage = obstacle.obstacle.passages.find(({ id }) => id === leg.passage);
  const line = passage === undefined ? undefined : passageLine(obstacle, { passage, gait: leg.gait, horse });
  passageCache.set(obstacle, [...cached, { passage: leg.passage, gait: leg.gait, horse, line }]);
  return line;
}

interface Journey {
  elements: LineElement[];
  crossings: Crossing[];
  gaps: Gap[];
  breaks: RideBreak[];
  along: Metres;
  going: Going;
}

function addElements(
  journey: Journey,
  elements: readonly LineElement[],
  { leg, horse }: { leg: number; horse: Horse },
): void {
  const offset = journey.along;
  for (const element of elements) {
    const seconds = element.seconds + allowance(element, journey.going, horse);
    journey.elements.push({ ...element, leg, from: element.from + offset, seconds });
    journey.going = goingOf(element);
  }
}

function addPassage(journey: Journey, line: PassageLine, { leg, horse }: { leg: number; horse: Horse }): void {
  const offset = journey.along;
  addElements(journey, line.elements, { leg, horse });
  for (const crossing of line.crossings) journey.crossings.push({ ...crossing, leg, at: crossing.at + offset });
  for (const gap of line.gaps) {
    const places = gap.landings.places.map(({ at, point }) => ({ at: at + offset, point }));
    journey.gaps.push({
      ...gap,
      leg,
      from: gap.from + offset,
      to: gap.to + offset,
      landings: { ...gap.landings, places },
    });
  }
  for (const each of line.breaks) journey.breaks.push({ ...each, leg });
  journey.along += line.length;
}

function wayElement(
  path: Path,
  part: 'approach' | 'finish',
  { gait, horse }: { gait: Gait; horse: Horse },
): LineElement {
  const length = pathLength(path);
  const seconds = length / speed(horse, gait);
  return { leg: 0, part, move: 'ride', gait, path, from: 0, length, facing: 0, turn: 0, seconds, moving: seconds };
}

function clockOf(elements: readonly LineElement[], ride: Ride): Line['clock'] {
  const legs: Seconds[] = ride.legs.map(() => 0);
  for (const { leg, seconds } of elements) legs[leg] = (legs[leg] ?? 0) + seconds;
  return { legs, go: legs.reduce((sum, each) => sum + each, 0) };
}

function inArena({ x, y }: Point, arena: Arena): boolean {
  return x >= 0 && y >= 0 && x <= arena.length && y <= arena.width;
}

/** What stands in the way where every way meets something. */
function blockedBreak({ piece }: Blockage, { to, gait }: Pick<RouteQuery, 'to' | 'gait'>, leg: number): RideBreak {
  const where = `No way to number ${leg + 1} that a horse can ${gait}`;
  if (piece === undefined) return { leg, at: { x: to.x, y: to.y }, why: `${where} stays inside the arena.` };
  const { x, y } = piece.pose;
  return { leg, at: { x, y }, why: `${where} goes clear of "${piece.key}".` };
}

/** The line of travel of the layout's ride. */
export function lineOfTravel({ arena, horse, layout, obstacles }: LineInputs): Line {
  const { ride } = layout;
  const journey: Journey = { elements: [], crossings: [], gaps: [], breaks: [], along: 0, going: 'standing' };
  let here: Pose = ride.start;
  let straightAfter = false;
  let fromEnd: RouteEnd | undefined;
  const roomless = !(arena.length > 0 && arena.width > 0);
  if (roomless) journey.breaks.push({ leg: 0, at: ride.start, why: 'The arena has no length or no width.' });

  const context = { arena, horse, obstacles };
  const legOf = (owner: Leg | Pose): number => ('id' in owner ? ride.legs.indexOf(owner) : ride.legs.length - 1);
  const goTo = (
    owner: Leg | Pose,
    part: 'approach' | 'finish',
    query: Pick<RouteQuery, 'to' | 'gait' | 'bends' | 'straightBefore'>,
    toEnd?: RouteEnd,
  ): void => {
    const way = cachedApproach(owner, { ...query, from: here, horse, straightAfter }, { ...context, fromEnd, toEnd });
    const element = wayElement(way.path, part, { gait: query.gait, horse });
    // What lies outside itself is told as that.
    const inside = inArena(here, arena) && inArena(query.to, arena);
    if (way.blocked !== undefined && (inside || way.blocked.piece !== undefined))
      journey.breaks.push(blockedBreak(way.blocked, query, legOf(owner)));
    addElements(journey, [element], { leg: legOf(owner), horse });
    journey.along += element.length;
  };

  for (const [i, leg] of roomless ? [] : ride.legs.entries()) {
    const obstacle = obstacles.find((each) => each.obstacle.id === leg.obstacle);
    const line = obstacle === undefined ? undefined : cachedPassage(obstacle, leg, horse);
    if (obstacle === undefined || line === undefined) {
      const why =
        obstacle === undefined
          ? `Number ${i + 1} of the ride is "${leg.obstacle}", which is not in the layout.`
          : `"${leg.obstacle}" cannot be ridden as "${leg.passage}".`;
      journey.breaks.push({ leg: i, at: { x: here.x, y: here.y }, why });
      continue;
    }
    const { id } = obstacle.obstacle;
    const toEnd = { obstacle: id, piece: line.firstPiece };
    const query = { to: line.start, gait: leg.approach, bends: leg.bends, straightBefore: line.entersOver };
    goTo(leg, 'approach', query, toEnd);
    if (!inArena(line.start, arena)) {
      const why = `Number ${i + 1} begins outside the arena.`;
      journey.breaks.push({ leg: i, at: { x: line.start.x, y: line.start.y }, why });
    }
    addPassage(journey, line, { leg: i, horse });
    here = line.end;
    straightAfter = line.leavesOver;
    fromEnd = { obstacle: id, piece: line.lastPiece };
  }
  const last = ride.legs.at(-1);
  if (ride.end !== undefined && last !== undefined && !roomless) {
    const gait = last.gait;
    goTo(ride.end, 'finish', { to: ride.end, gait, bends: NO_BENDS, straightBefore: false });
  }
  const { elements, crossings, gaps, breaks, along } = journey;
  const leads = leadStretches(elements, ride.legs);
  return {
    elements,
    crossings,
    gaps,
    breaks,
    transitions: transitionsOn(elements, horse),
    leads,
    leadNotes: leadNotes(leads, elements, horse),
    shown: shownGaits(elements),
    length: along,
    clock: clockOf(elements, ride),
  };
}

const NO_BENDS: readonly Point[] = [];
