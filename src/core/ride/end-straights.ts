import type { Metres } from '../measure/quantity.ts';
import { type Path, pathFrom } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import { mergedPath } from './connection.ts';

/** The penalty for each metre of straight that is wanted at an end and missing, in metres of way. Estimate. */
export const MISSING_PENALTY = 3;

/** A way between the inner ends of the straights that are kept at either end. */
export interface EndStraights {
  readonly begin: Pose;
  readonly finish: Pose;
  /** The cost of the straights: their length, and the penalty for what is missing of them. */
  readonly cost: Metres;
  readonly opening: Path;
  readonly closing: Path;
}

/** The two ends, and whether the horse wants to be straight at them for its own length, metres. */
export interface EndStraightsQuery {
  readonly from: Pose;
  readonly to: Pose;
  readonly straightAfter: boolean;
  readonly straightBefore: boolean;
  readonly unit: Metres;
}

function ahead(pose: Pose, by: Metres): Pose {
  return { ...pose, x: pose.x + by * Math.cos(pose.angle), y: pose.y + by * Math.sin(pose.angle) };
}

function endStraights(
  { from, to, straightAfter, straightBefore, unit }: EndStraightsQuery,
  [after, before]: readonly [number, number],
): EndStraights {
  const missing = (straightAfter ? Math.max(0, 1 - after) : 0) + (straightBefore ? Math.max(0, 1 - before) : 0);
  const finish = ahead(to, -before * unit);
  return {
    begin: ahead(from, after * unit),
    finish,
    cost: (after + before + MISSING_PENALTY * missing) * unit,
    opening: pathFrom(from, [{ length: after * unit, curvature: 0 }]),
    closing: pathFrom(finish, [{ length: before * unit, curvature: 0 }]),
  };
}

/** Every choice of straights, in lengths of the horse, the wanted ones first. */
export function endStraightChoices(query: EndStraightsQuery, shares: readonly number[]): EndStraights[] {
  const first = query.straightAfter ? shares : [0];
  const last = query.straightBefore ? shares : [0];
  return first.flatMap((after) => last.map((before) => endStraights(query, [after, before])));
}

/** A part of the way with the straights that belong to it: the opening to the first, the closing to the last. */
export function withStraights(
  { opening, closing }: EndStraights,
  middle: Path,
  ends = { first: true, last: true },
): Path {
  return mergedPath([...(ends.first ? opening : []), ...middle, ...(ends.last ? closing : [])]);
}
