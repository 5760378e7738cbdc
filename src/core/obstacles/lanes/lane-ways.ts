/** The ways through a lane with corners, the same for every shape of it. */
import type { Metres } from '../../measure/quantity.ts';
import type { Piece } from '../../pieces/piece.ts';
import { type Point, TOUCH } from '../../plane/point.ts';
import { normalizeAngle, type Pose } from '../../plane/pose.ts';
import { CLEAR_DISTANCE, poseStationOn, turnStation } from '../parts.ts';
import type { Passage, Station } from '../passage.ts';

/** A lane as the middle of its legs: an end, the corners, the other end. `beside[i]` is a pole of the leg after spot i. */
export interface Lane {
  readonly spots: readonly Point[];
  readonly beside: readonly Piece[];
}

/** A lane of which both walls run beside each other for less is no lane. Estimate: 2 ft. */
export const LEAST_LANE: Metres = 0.6096;

function pointAlong(from: Point, to: Point, far: Metres): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < TOUCH) throw new Error('along: a leg of a lane has no length');
  return { x: from.x + (far / length) * (to.x - from.x), y: from.y + (far / length) * (to.y - from.y) };
}

function reversedLane({ spots, beside }: Lane): Lane {
  return { spots: spots.toReversed(), beside: beside.toReversed() };
}

/**
 * From the first end: turned round and backed through, or ridden in and backed out. The horse stands with all feet clear
 * of the mouth before and after; at a corner it turns on the spot.
 */
function passagesFrom(
  { spots, beside }: Lane,
  what: string,
  { suffix, where }: { suffix: string; where: string },
): Passage[] {
  const legs = spots.slice(1).flatMap((to, i) => {
    const [from, pole] = [spots[i], beside[i]];
    return from === undefined || pole === undefined
      ? []
      : [{ from, to, pole, heading: Math.atan2(to.y - from.y, to.x - from.x) }];
  });
  const [first, last] = [legs[0], legs.at(-1)];
  if (first === undefined || last === undefined) throw new Error(`waysFrom: a lane has legs, ${what} has none`);
  const on = ({ pole }: (typeof legs)[number], at: Point, angle: number, move: 'ride' | 'back' = 'ride'): Station =>
    poseStationOn(pole, { ...at, angle } satisfies Pose, move);
  const mouth = pointAlong(first.from, first.to, -CLEAR_DISTANCE);
  const out = pointAlong(last.to, last.from, -CLEAR_DISTANCE);
  const deep = pointAlong(last.to, last.from, CLEAR_DISTANCE / 2);
  const turnsTo = (i: number): number => normalizeAngle((legs[i + 1]?.heading ?? 0) - (legs[i]?.heading ?? 0));
  const through = (move: 'ride' | 'back', end: Point): Station[] =>
    legs.flatMap((leg, i): Station[] => {
      const facing = move === 'back' ? leg.heading + Math.PI : leg.heading;
      if (i === legs.length - 1) return [on(leg, end, facing, move)];
      return [on(leg, leg.to, facing, move), turnStation(turnsTo(i))];
    });
  const home = legs.toReversed().flatMap((leg, k): Station[] => {
    const i = legs.length - 1 - k;
    if (i === 0) return [on(leg, mouth, leg.heading, 'back')];
    return [on(leg, leg.from, leg.heading, 'back'), turnStation(-turnsTo(i - 1))];
  });
  return [
    {
      id: `turn-and-back${suffix}`,
      title: `turn and back through the ${what}${where}`,
      gaits: ['walk'],
      stations: [on(first, mouth, first.heading), turnStation(Math.PI), ...through('back', out)],
    },
    {
      id: `in-and-back${suffix}`,
      title: `ride into the ${what}${where} and back out`,
      gaits: ['walk'],
      stations: [on(first, mouth, first.heading), ...through('ride', deep), ...home],
    },
  ];
}

/** All ways through a lane that can be entered at both ends; `what` is its name: "U", "zigzag". */
export function lanePassages(lane: Lane, what: string): Passage[] {
  return [
    ...passagesFrom(lane, what, { suffix: '', where: '' }),
    ...passagesFrom(reversedLane(lane), what, { suffix: '-return', where: ' from the other end' }),
  ];
}
