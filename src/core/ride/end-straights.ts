import type { Metres } from '../measure/quantity.ts';
import { type Path, pathFrom, reversedPath } from '../plane/path.ts';
import { oppositePose, type Pose } from '../plane/pose.ts';

/** The penalty for each metre of straight that is wanted at an end and missing, in metres of way. Estimate. */
const MISSING_PENALTY = 3;

/** One choice for an end of a way: how far it is kept straight there. */
export interface WayEnd {
  /** The inner end of the straight, where the search takes over. */
  readonly pose: Pose;
  readonly straight: Path;
  /** The length of the straight, and the penalty for what is missing of it. */
  readonly cost: Metres;
}

/** What is wanted of the ends: straight after the one obstacle and before the other for `unit` metres, a horse's length. */
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

function straightCost(share: number, isWanted: boolean, unit: Metres): Metres {
  return (share + (isWanted ? MISSING_PENALTY * Math.max(0, 1 - share) : 0)) * unit;
}

/** The choices at the beginning of a way, in shares of the unit; none is kept straight where none is wanted. */
export function openings({ from, straightAfter, unit }: EndStraightsQuery, shares: readonly number[]): WayEnd[] {
  return (straightAfter ? shares : [0]).map((share) => ({
    pose: ahead(from, share * unit),
    straight: pathFrom(from, [{ length: share * unit, curvature: 0 }]),
    cost: straightCost(share, straightAfter, unit),
  }));
}

/** The choices at the end of a way. */
export function closings({ to, straightBefore, unit }: EndStraightsQuery, shares: readonly number[]): WayEnd[] {
  return (straightBefore ? shares : [0]).map((share) => {
    const pose = ahead(to, -share * unit);
    const straight = pathFrom(pose, [{ length: share * unit, curvature: 0 }]);
    return { pose, straight, cost: straightCost(share, straightBefore, unit) };
  });
}

/** The end as one of the way ridden the other way round. */
export function reversedEnd({ pose, straight, cost }: WayEnd): WayEnd {
  return { pose: oppositePose(pose), straight: reversedPath(straight), cost };
}
