/** The ways through a lane with corners, the same for every shape of it. */
import type { Metres, Radians } from '../../measure/quantity.ts';
import type { Piece } from '../../pieces/piece.ts';
import { type Point, TOUCH } from '../../plane/point.ts';
import { normalizeAngle } from '../../plane/pose.ts';
import { CLEAR_DISTANCE, poseStationOn, turnStation } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';
import type { Wording } from '../wording.ts';

/** A lane as its middle line, in the obstacle's frame: an end, the corners, the other end. Metres. */
export interface Lane {
  readonly spots: readonly Point[];
  /** A pole beside each leg: `beside[i]` for the leg after corner i. The stations on the leg are anchored to it. */
  readonly beside: readonly Piece[];
  /** How much further one wall runs than the other at the ends; absent: both end together. */
  readonly overhang?: Metres;
}

/** Where both walls run beside each other for less than this there is no lane. Estimate: 2 ft. */
export const LEAST_LANE: Metres = 0.6096;

/** A straight part of a lane, in the direction in which the lane is gone through. */
interface LaneLeg {
  readonly from: Point;
  readonly to: Point;
  readonly pole: Piece;
  readonly heading: Radians;
}

function legsOf({ spots, beside }: Lane): readonly LaneLeg[] {
  return spots.slice(1).flatMap((to, i) => {
    const [from, pole] = [spots[i], beside[i]];
    if (from === undefined || pole === undefined) return [];
    return [{ from, to, pole, heading: Math.atan2(to.y - from.y, to.x - from.x) }];
  });
}

function endsOf(legs: readonly LaneLeg[]): readonly [first: LaneLeg, last: LaneLeg] {
  const [first, last] = [legs[0], legs.at(-1)];
  if (first === undefined || last === undefined) throw new Error('lane: expected at least one leg, got none');
  return [first, last];
}

function pointAlong(from: Point, to: Point, far: Metres): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < TOUCH) throw new Error('lane: a leg has no length');
  return { x: from.x + (far / length) * (to.x - from.x), y: from.y + (far / length) * (to.y - from.y) };
}

/** Where the horse stands before the lane with all four feet clear of its first end, and behind it. */
function mouthOf({ from, to }: LaneLeg): Point {
  return pointAlong(from, to, -CLEAR_DISTANCE);
}
function exitOf({ from, to }: LaneLeg): Point {
  return pointAlong(to, from, -CLEAR_DISTANCE);
}

function stationOn({ pole }: LaneLeg, at: Point, angle: Radians, move: 'ride' | 'back' = 'ride'): Station {
  return poseStationOn(pole, { ...at, angle }, move);
}

/** The signed turn from each leg to the next. */
function cornerTurn(legs: readonly LaneLeg[], i: number): Radians {
  return normalizeAngle((legs[i + 1]?.heading ?? 0) - (legs[i]?.heading ?? 0));
}

/** Through all legs to `end` on the last, with a turn on the spot at each corner. */
function throughLegs(legs: readonly LaneLeg[], move: 'ride' | 'back', end: Point): readonly Station[] {
  return legs.flatMap((leg, i): Station[] => {
    const facing = move === 'back' ? leg.heading + Math.PI : leg.heading;
    if (i === legs.length - 1) return [stationOn(leg, end, facing, move)];
    return [stationOn(leg, leg.to, facing, move), turnStation(cornerTurn(legs, i))];
  });
}

/** Turned round before the first end, and backed through the lane until all feet are clear behind it. */
export function turnAndBack(lane: Lane): readonly Station[] {
  const legs = legsOf(lane);
  const [first, last] = endsOf(legs);
  return [
    stationOn(first, mouthOf(first), first.heading),
    turnStation(Math.PI),
    ...throughLegs(legs, 'back', exitOf(last)),
  ];
}

/** Ridden in from the first end as far as the lane has two walls, and backed out by the same way. */
function inAndBack(lane: Lane): readonly Station[] {
  const legs = legsOf(lane);
  const [first, last] = endsOf(legs);
  const deep = pointAlong(last.to, last.from, (lane.overhang ?? 0) + CLEAR_DISTANCE / 2);
  const home = legs.toReversed().flatMap((leg, k): Station[] => {
    const i = legs.length - 1 - k;
    if (i === 0) return [stationOn(leg, mouthOf(leg), leg.heading, 'back')];
    return [stationOn(leg, leg.from, leg.heading, 'back'), turnStation(-cornerTurn(legs, i - 1))];
  });
  return [stationOn(first, mouthOf(first), first.heading), ...throughLegs(legs, 'ride', deep), ...home];
}

/** Ridden in to the last corner, turned there, and backed out at the other end. */
export function inAndOut(lane: Lane): readonly Station[] {
  const legs = legsOf(lane);
  const [first, last] = endsOf(legs);
  const corner = legs.at(-2);
  if (corner === undefined) throw new Error('lane: expected a corner, got a straight lane');
  return [
    stationOn(first, mouthOf(first), first.heading),
    ...throughLegs(legs.slice(0, -1), 'ride', corner.to),
    turnStation(normalizeAngle(last.heading + Math.PI - corner.heading)),
    stationOn(last, exitOf(last), last.heading + Math.PI, 'back'),
  ];
}

/** The same lane, gone through from its other end. */
export function reversedLane(lane: Lane): Lane {
  return { ...lane, spots: lane.spots.toReversed(), beside: lane.beside.toReversed() };
}

/** What the words call a lane of this shape: "U", "zigzag". */
export function laneWords(noun: string): Wording {
  return { noun, ridden: 'through {}', isEntered: true, isLane: true };
}

/** All ways through a lane that can be entered at both ends; `what` is its name: "U", "zigzag". */
export function lanePassages(lane: Lane, what: string): Passage[] {
  const ends = [
    { from: lane, suffix: '', where: '' },
    { from: reversedLane(lane), suffix: '-return', where: ' from the other end' },
  ];
  return ends.flatMap(({ from, suffix, where }): Passage[] => [
    {
      id: `turn-and-back${suffix}`,
      title: `turn and back through the ${what}${where}`,
      gaits: ['walk'],
      stations: turnAndBack(from),
    },
    {
      id: `in-and-back${suffix}`,
      title: `ride into the ${what}${where} and back out`,
      gaits: ['walk'],
      stations: inAndBack(from),
    },
  ]);
}
