/** The line of travel: approach and obstacle, leg by leg, joined along one line. */
import type { Arena, Layout, LeadChange, Leg, Ride } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import { type Gait, type Horse, speed } from '../horses/horse.ts';
import type { Metres, Radians, Seconds } from '../measure/quantity.ts';
import { type Path, pathFrom, pathLength } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import type { Blockage } from './approach.ts';
import { cachedPassage } from './cached-ways.ts';
import { leadNotes, leadStretches } from './leads.ts';
import type { Crossing, Gap, LegWay, Line, LineElement, RideBreak } from './line.ts';
import type { PassageLine } from './passage-line.ts';
import { shownGaits, shownLeads } from './shown.ts';
import { riddenElements } from './transitions.ts';
import {
  arrivalAt,
  arrivalAtEnd,
  type Departure,
  departureAtStart,
  departureFrom,
  keptWayBetween,
  soughtWayBetween,
  type WayQuery,
} from './way-between.ts';

/** What a line of travel depends on. */
export interface LineInputs {
  readonly arena: Arena;
  readonly horse: Horse;
  readonly layout: Layout;
  /** The layout's obstacles, in its order. */
  readonly obstacles: readonly PlacedObstacle[];
  /** How the class asks for a change of lead; absent: either way. */
  readonly leadChange?: LeadChange | undefined;
}

/** The state while the line is put together: where the horse is, and what was added so far. */
interface Journey {
  readonly inputs: LineInputs;
  /** The ways of the line before, by leg; empty where the best ones are wanted. */
  readonly before: ReadonlyMap<LegWay['leg'], LegWay>;
  readonly ways: LegWay[];
  readonly elements: LineElement[];
  readonly crossings: Crossing[];
  readonly gaps: Gap[];
  readonly breaks: RideBreak[];
  along: Metres;
  departure: Departure;
}

function addElements(journey: Journey, elements: readonly LineElement[], leg: number): void {
  const offset = journey.along;
  for (const element of elements) journey.elements.push({ ...element, leg, from: element.from + offset });
}

function placedGap(gap: Gap, leg: number, offset: Metres): Gap {
  const places = gap.landings.places.map(({ at, point }) => ({ at: at + offset, point }));
  return { ...gap, leg, from: gap.from + offset, to: gap.to + offset, landings: { ...gap.landings, places } };
}

function addPassage(journey: Journey, line: PassageLine, leg: number): void {
  const offset = journey.along;
  addElements(journey, line.elements, leg);
  for (const crossing of line.crossings) journey.crossings.push({ ...crossing, leg, at: crossing.at + offset });
  for (const gap of line.gaps) journey.gaps.push(placedGap(gap, leg, offset));
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

/** A turn on the spot between two obstacles. */
function turnElement(
  at: Pose,
  by: Radians,
  { part, horse }: { part: 'approach' | 'finish'; horse: Horse },
): LineElement {
  const seconds = (Math.abs(by) / (2 * Math.PI)) * horse.turn.value;
  const path = pathFrom(at, []);
  return {
    leg: 0,
    part,
    move: 'turn',
    gait: 'walk',
    path,
    from: 0,
    length: 0,
    facing: 0,
    turn: by,
    seconds,
    moving: seconds,
  };
}

function clockOf(elements: readonly LineElement[], ride: Ride): Line['clock'] {
  const legs: Seconds[] = ride.legs.map(() => 0);
  for (const { leg, seconds } of elements) legs[leg] = (legs[leg] ?? 0) + seconds;
  return { legs, go: legs.reduce((sum, each) => sum + each, 0) };
}

function inArena({ x, y }: Point, arena: Arena): boolean {
  return x >= 0 && y >= 0 && x <= arena.length && y <= arena.width;
}

/** What stands in the way where every approach meets something. */
function blockedBreak({ piece }: Blockage, { to, gait }: Pick<WayQuery, 'to' | 'gait'>, leg: number): RideBreak {
  const where = `No way to number ${leg + 1} that a horse can ${gait}`;
  if (piece === undefined) return { leg, at: { x: to.at.x, y: to.at.y }, why: `${where} stays inside the arena.` };
  const { x, y } = piece.pose;
  return { leg, at: { x, y }, why: `${where} goes clear of "${piece.key}".` };
}

/** The way from here to the next obstacle or to the end. */
interface Way {
  /** Whose way it is: the key under which it is cached. */
  readonly owner: Leg | Pose;
  readonly of: LegWay['leg'];
  readonly part: 'approach' | 'finish';
  readonly leg: number;
  readonly query: Pick<WayQuery, 'to' | 'gait' | 'bends' | 'passes'>;
}

function addWay(journey: Journey, { owner, of, part, leg, query }: Way): void {
  const { departure: from, inputs } = journey;
  const { arena, horse } = inputs;
  const way = { ...query, from };
  const before = journey.before.get(of);
  const found = before === undefined ? undefined : keptWayBetween(before, way, inputs);
  const { by, kept } = found ?? soughtWayBetween(owner, way, inputs);
  journey.ways.push({ leg: of, by, kept });
  const { path, blocked } = kept.found;
  if (by !== 0) addElements(journey, [turnElement(from.at, by, { part, horse })], leg);
  const element = wayElement(path, part, { gait: query.gait, horse });
  // An end outside the arena is reported by a break of its own.
  const inside = inArena(from.at, arena) && inArena(query.to.at, arena);
  if (blocked !== undefined && (inside || blocked.piece !== undefined)) {
    journey.breaks.push(blockedBreak(blocked, query, leg));
  }
  addElements(journey, [element], leg);
  journey.along += element.length;
}

/** Adds the approach to an obstacle and the line over it; or only a break, when it cannot be ridden so. */
function addLeg(journey: Journey, leg: Leg, index: number): void {
  const { arena, horse, obstacles } = journey.inputs;
  const obstacle = obstacles.find((each) => each.obstacle.id === leg.obstacle);
  const line = obstacle === undefined ? undefined : cachedPassage(obstacle, leg, horse);
  const breakAt = ({ x, y }: Point, why: string) => journey.breaks.push({ leg: index, at: { x, y }, why });
  if (obstacle === undefined) {
    breakAt(journey.departure.at, `Number ${index + 1} of the ride is "${leg.obstacle}", which is not in the layout.`);
    return;
  }
  if (line === undefined) {
    breakAt(journey.departure.at, `"${leg.obstacle}" cannot be ridden as "${leg.passage}".`);
    return;
  }
  const { id } = obstacle.obstacle;
  const query = { to: arrivalAt(id, line), gait: leg.approach, bends: leg.bends, passes: leg.passes };
  addWay(journey, { owner: leg, of: leg.id, part: 'approach', leg: index, query });
  if (!inArena(line.start, arena)) breakAt(line.start, `Number ${index + 1} begins outside the arena.`);
  addPassage(journey, line, index);
  journey.departure = departureFrom(id, line);
}

/** The way to the end has none. */
export const NO_BENDS: readonly Point[] = [];

/**
 * The line of travel of the layout's ride. Where a part cannot be ridden there is a break; the rest of the line is
 * still made. With a line `before`, as during a drag, its ways keep their sides; without one they are the best.
 */
export function lineOfTravel(inputs: LineInputs, before?: Line): Line {
  const { arena, horse, layout } = inputs;
  const { ride } = layout;
  const journey: Journey = {
    inputs,
    before: new Map(before?.ways.map((each) => [each.leg, each])),
    ways: [],
    elements: [],
    crossings: [],
    gaps: [],
    breaks: [],
    along: 0,
    departure: departureAtStart(ride.start),
  };
  if (arena.length > 0 && arena.width > 0) {
    for (const [index, leg] of ride.legs.entries()) addLeg(journey, leg, index);
    const last = ride.legs.at(-1);
    if (ride.end !== undefined && last !== undefined) {
      const query = { to: arrivalAtEnd(ride.end), gait: last.gait, bends: NO_BENDS };
      addWay(journey, { owner: ride.end, of: null, part: 'finish', leg: ride.legs.length - 1, query });
    }
  } else {
    journey.breaks.push({ leg: 0, at: ride.start, why: 'The arena has no length or no width.' });
  }
  const { crossings, gaps, breaks, along } = journey;
  const { elements, transitions } = riddenElements({
    elements: journey.elements,
    poles: crossings.map(({ at }) => at),
    horse,
  });
  const leads = leadStretches(elements, ride.legs, horse);
  return {
    ways: journey.ways,
    elements,
    crossings,
    gaps,
    breaks,
    transitions,
    leads,
    leadNotes: leadNotes(leads, elements, { horse, how: inputs.leadChange }),
    shown: shownGaits(elements),
    shownLeads: shownLeads(leads),
    length: along,
    clock: clockOf(elements, ride),
  };
}
