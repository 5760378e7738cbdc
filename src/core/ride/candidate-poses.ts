/** Places that a way round things may lead through. */
import type { Metres, Radians } from '../measure/quantity.ts';
import { shortestLength } from '../plane/dubins.ts';
import { laid, pathEnd } from '../plane/path.ts';
import { type Pose, placed } from '../plane/pose.ts';
import { type Corner, cornerPose } from './corner-arcs.ts';

/** Where along a corner's rounded edge a line is tried first. */
const TRIED = [0, 0.2, 0.4, 0.6, 0.8, 1];
/** How far a way may turn at an end before it goes on, and then go straight, in radii. */
const TURNS: readonly Radians[] = [-3, -2, -1, 0, 1, 2, 3].map((n) => (n * Math.PI) / 4);
const STRAIGHTS = [0.5, 1, 2];

/** A place on the way: the beginning, the end, a touch of a corner, or one near an end. */
export interface Place {
  readonly pose: Pose;
  /** What is at least left to go from here. */
  readonly left: Metres;
  /** The places beside it, a step away: 1 is a corner's whole edge, or a radius and a radian. */
  moved(step: number): readonly Place[];
}

/** The end that places lead to, at the radius of the way. */
export interface Goal {
  readonly finish: Pose;
  readonly radius: Metres;
}

export function fixedPlace(pose: Pose, { finish, radius }: Goal): Place {
  return { pose, left: shortestLength(pose, finish, radius), moved: () => [] };
}

function touch(corner: Corner, share: number, goal: Goal): Place {
  return {
    ...fixedPlace(cornerPose(corner, share), goal),
    moved: (step) =>
      [share - step, share + step]
        .map((each) => Math.min(1, Math.max(0, each)))
        .filter((each) => each !== share)
        .map((each) => touch(corner, each, goal)),
  };
}

export function touches(corner: Corner, goal: Goal): readonly Place[] {
  return TRIED.map((share) => touch(corner, share, goal));
}

function loose(pose: Pose, goal: Goal): Place {
  return {
    ...fixedPlace(pose, goal),
    moved: (step) =>
      [-step, step].flatMap((by) => [
        loose({ ...placed(pose, { x: 0, y: by * goal.radius }), angle: pose.angle }, goal),
        loose({ ...pose, angle: pose.angle + by }, goal),
      ]),
  };
}

function asideOf(end: Pose, radius: Metres): Pose[] {
  return TURNS.flatMap((turn) => {
    const arc = pathEnd(laid(end, [{ length: Math.abs(turn) * radius, curvature: Math.sign(turn) / radius }]));
    return STRAIGHTS.map((straight) => ({ ...placed(arc, { x: straight * radius, y: 0 }), angle: arc.angle }));
  });
}

function about({ x, y, angle }: Pose): Pose {
  return { x, y, angle: angle + Math.PI };
}

/** Places near both ends, where a way goes on that cannot go straight from the one to the other. */
export function nearPlaces(begin: Pose, goal: Goal): readonly Place[] {
  const { finish, radius } = goal;
  const after = asideOf(begin, radius);
  const before = asideOf(about(finish), radius).map(about);
  return [...after, ...before].map((pose) => loose(pose, goal));
}
