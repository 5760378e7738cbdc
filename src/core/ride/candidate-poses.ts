/** Poses that a way around obstacles may pass through: the nodes of the search. */
import type { Metres, Radians } from '../measure/quantity.ts';
import { shortestDubinsLength } from '../plane/dubins.ts';
import { pathEnd, pathFrom } from '../plane/path.ts';
import { oppositePose, type Pose, toWorld } from '../plane/pose.ts';
import { arcPose, type CornerArc } from './corner-arcs.ts';
import type { WayEnd } from './end-straights.ts';

/** On a corner's rounded edge a line is first tried at headings this far apart, or nearer. */
const TANGENT_STEP: Radians = Math.PI / 8;
/** Near an end the way may turn by these angles before it goes straight; the straights, in radii. */
const TURNS: readonly Radians[] = [-3, -2, -1, 0, 1, 2, 3].map((n) => (n * Math.PI) / 4);
const STRAIGHTS = [0.5, 1, 2];

/** A node: the start, the end, a pose on a corner's arc, or one near an end. */
export interface CandidatePose {
  readonly pose: Pose;
  /** The heuristic: the least cost that is left from here. */
  readonly heuristic: Metres;
  /** Of a node where the way begins or ends. */
  readonly end?: WayEnd;
  /** Of a pose on a corner's arc, and how far along the arc it is. */
  readonly on?: { readonly corner: CornerArc; readonly share: number };
  /** Nearby poses, `step` away: 1 is a corner's whole arc, or a radius and a radian. */
  neighbours(step: number): readonly CandidatePose[];
}

/** The ends that the nodes lead to, one of them to be reached, at the radius of the way. */
export interface Goal {
  readonly finishes: readonly WayEnd[];
  readonly radius: Metres;
}

const noNeighbours = (): readonly CandidatePose[] => [];

function leastCost(pose: Pose, { finishes, radius }: Goal): Metres {
  let least = Number.POSITIVE_INFINITY;
  for (const finish of finishes) {
    least = Math.min(least, shortestDubinsLength(pose, finish.pose, radius) + finish.cost);
  }
  return least;
}

function candidatePose(pose: Pose, goal: Goal): CandidatePose {
  return { pose, heuristic: leastCost(pose, goal), neighbours: noNeighbours };
}

/** The node where a way may begin. */
export function startPose(end: WayEnd, goal: Goal): CandidatePose {
  return { ...candidatePose(end.pose, goal), end };
}

/** The node where a way may end. */
export function goalPose(end: WayEnd): CandidatePose {
  return { pose: end.pose, heuristic: end.cost, end, neighbours: noNeighbours };
}

export function tangentPose(corner: CornerArc, share: number, goal: Goal): CandidatePose {
  return {
    ...candidatePose(arcPose(corner, share), goal),
    on: { corner, share },
    neighbours: (step) =>
      [share - step, share + step]
        .map((each) => Math.min(1, Math.max(0, each)))
        .filter((each) => each !== share)
        .map((each) => tangentPose(corner, each, goal)),
  };
}

export function tangentPoses(corner: CornerArc, goal: Goal): readonly CandidatePose[] {
  const steps = Math.max(1, Math.ceil(corner.sweep / TANGENT_STEP - 1e-9));
  return Array.from({ length: steps + 1 }, (_, i) => tangentPose(corner, i / steps, goal));
}

export function freePose(pose: Pose, goal: Goal): CandidatePose {
  return {
    ...candidatePose(pose, goal),
    neighbours: (step) =>
      [-step, step].flatMap((by) => [
        freePose({ ...toWorld(pose, { x: 0, y: by * goal.radius }), angle: pose.angle }, goal),
        freePose({ ...pose, angle: pose.angle + by }, goal),
      ]),
  };
}

function posesAside(end: Pose, radius: Metres): Pose[] {
  return TURNS.flatMap((turn) => {
    const arc = pathEnd(pathFrom(end, [{ length: Math.abs(turn) * radius, curvature: Math.sign(turn) / radius }]));
    return STRAIGHTS.map((straight) => ({ ...toWorld(arc, { x: straight * radius, y: 0 }), angle: arc.angle }));
  });
}

/** Poses near all ends, for ways that cannot go straight from one to the other. */
export function posesNearEnds(begins: readonly WayEnd[], goal: Goal): readonly CandidatePose[] {
  const { finishes, radius } = goal;
  const after = begins.slice(-1).flatMap(({ pose }) => posesAside(pose, radius));
  const before = finishes.slice(-1).flatMap(({ pose }) => posesAside(oppositePose(pose), radius).map(oppositePose));
  return [...after, ...before].map((pose) => freePose(pose, goal));
}
