/** Two poles that are side passed one after the other, with the turn where they meet: what an L, a V and a T share. */
import { STOCK_HORSE } from '../../horses/horses.ts';
import type { Metres, Radians } from '../../measure/quantity.ts';
import type { Piece } from '../../pieces/piece.ts';
import { distance, type Point, TOUCH } from '../../plane/point.ts';
import type { Pose } from '../../plane/pose.ts';
import { poseStationOn, turnStation } from '../parts.ts';
import type { Passage, Pivot, Station } from '../passage.ts';
import { PAST_END } from './side-pass.ts';

const PIVOTS: readonly Pivot[] = ['forehand', 'haunches'];

/** A pole as one leaves the corner along it. */
export interface CornerPole {
  readonly pole: Piece;
  /** Away from the corner. */
  readonly heading: Radians;
  /** From the corner to its far end. */
  readonly length: Metres;
}

/**
 * Along the first leg to the corner, over which the axes cross, and along the second away from it. `counter-clockwise`:
 * the second leg lies that way round from the first, by `angle`.
 *
 * On the forehand the front feet are inside the angle and tread at one place, as far from both poles as a foot stands from
 * the horse's middle, while the quarters go round; on the haunches the hind feet do. In a corner wider than square that
 * place would be at the very tip, and the turn over the end of the other pole: the horse turns half, goes across the
 * corner, and turns the other half.
 */
function cornerStations(
  at: Point,
  { from, to, angle, turn, on }: { from: CornerPole; to: CornerPole; angle: Radians; turn: 1 | -1; on: Pivot },
): readonly Station[] {
  const foot = STOCK_HORSE.wheelbase.value / 2;
  const reachOut = Math.max(foot / Math.tan(angle / 2), foot);
  const place = ({ pole, heading }: CornerPole, far: Metres, facing: Radians, move: 'ride' | 'side-pass'): Station =>
    poseStationOn(pole, { x: at.x + far * Math.cos(heading), y: at.y + far * Math.sin(heading), angle: facing }, move);
  // Inside the angle, square to the first leg; on the haunches the tail is there.
  const inwards = from.heading + (turn * Math.PI) / 2;
  const facing = on === 'forehand' ? inwards : inwards + Math.PI;
  const by = -turn * (Math.PI - angle);
  const ahead = on === 'forehand' ? foot : -foot;
  const beside = ({ heading }: CornerPole, angled: Radians): Pose => ({
    x: at.x + reachOut * Math.cos(heading),
    y: at.y + reachOut * Math.sin(heading),
    angle: angled,
  });
  /** Where the feet stand about which the horse turns. */
  const feet = ({ x, y, angle: heading }: Pose, far: Metres): Point => ({
    x: x + far * Math.cos(heading),
    y: y + far * Math.sin(heading),
  });
  const [before, after] = [feet(beside(from, facing), ahead), feet(beside(to, facing + by), ahead)];
  const half = { ...feet({ ...after, angle: facing + by / 2 }, -ahead), angle: facing + by / 2 };
  const turned =
    distance(before, after) < TOUCH
      ? [turnStation(by, on)]
      : [turnStation(by / 2, on), poseStationOn(to.pole, half, 'side-pass'), turnStation(by / 2, on)];
  return [
    place(from, from.length + PAST_END, facing, 'ride'),
    place(from, reachOut, facing, 'side-pass'),
    ...turned,
    place(to, to.length + PAST_END, facing + by, 'side-pass'),
  ];
}

/** Both ways round a corner, on the forehand and on the haunches. `second` lies counter-clockwise of `first`. */
export function cornerPassages(
  at: Point,
  [first, second]: readonly [CornerPole, CornerPole],
  { angle, what, id }: { readonly angle: Radians; readonly what: string; readonly id: string },
): Passage[] {
  return ([1, -1] as const).flatMap((turn) =>
    PIVOTS.map((on): Passage => {
      const [from, to] = turn === 1 ? [first, second] : [second, first];
      // Facing into the angle from the first leg, the corner is on the left.
      const hand = (turn === 1) === (on === 'forehand') ? 'left' : 'right';
      const where = turn === 1 ? '' : ' from the other end';
      return {
        id: `${id}${on}${turn === 1 ? '' : '-return'}`,
        title: `side pass ${hand} over the ${what}${where} with a turn on the ${on} at the corner`,
        gaits: ['walk'],
        stations: cornerStations(at, { from, to, angle, turn, on }),
      };
    }),
  );
}
