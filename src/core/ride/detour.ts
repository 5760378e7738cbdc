/** How a way goes around things, told so that it can be laid anew when they have moved. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { distance } from '../plane/point.ts';
import { compose, type Pose, toLocal } from '../plane/pose.ts';
import { type CandidatePose, freePose, tangentPose } from './candidate-poses.ts';
import { cornerArcs } from './corner-arcs.ts';
import type { RouteSearch } from './search.ts';

/** A pose of the way: on the arc of a corner, or beside one of the two ends and in its frame. */
type Via =
  | { readonly obstacle: string; readonly vertex: number; readonly side: 1 | -1; readonly share: number }
  | { readonly near: 'begin' | 'finish'; readonly local: Pose };

export interface Detour {
  readonly radius: Metres;
  /** Which of the choices for its beginning and its end. */
  readonly begin: number;
  readonly finish: number;
  readonly vias: readonly Via[];
}

/** The poses of a search's way, from start to goal, as a detour. */
export function detourThrough({ query, starts, goals }: RouteSearch, poses: readonly CandidatePose[]): Detour {
  const [first, last] = [poses[0], poses.at(-1)];
  if (first === undefined || last === undefined) throw new Error('detourThrough: a way has two ends, got none');
  const viaOf = ({ pose, on }: CandidatePose): Via => {
    if (on !== undefined) {
      const { obstacle, vertex, side } = on.corner;
      return { obstacle, vertex, side, share: on.share };
    }
    const near = distance(pose, first.pose) < distance(pose, last.pose) ? 'begin' : 'finish';
    return { near, local: toLocal(near === 'begin' ? first.pose : last.pose, pose) };
  };
  return {
    radius: query.radius,
    begin: starts.findIndex(({ end }) => end === first.end),
    finish: goals.findIndex(({ end }) => end === last.end),
    vias: poses.slice(1, -1).map(viaOf),
  };
}

/** On the way back a corner on the left is on the right, its arc runs the other way, and all poses face about. */
function reversedVia(via: Via): Via {
  if (!('near' in via)) return { ...via, side: via.side === 1 ? -1 : 1, share: 1 - via.share };
  const { x, y, angle } = via.local;
  return { near: via.near === 'begin' ? 'finish' : 'begin', local: { x: -x, y: -y, angle } };
}

export function reversedDetour({ radius, begin, finish, vias }: Detour): Detour {
  return { radius, begin: finish, finish: begin, vias: vias.map(reversedVia).reverse() };
}

/** The poses of a detour where its ends and corners are now; undefined when one of them is gone. */
export function detourPoses(
  { query, starts, goals }: RouteSearch,
  { begin, finish, vias }: Detour,
  obstacles: readonly PlacedObstacle[],
): readonly CandidatePose[] | undefined {
  const [start, goal] = [starts[begin], goals[finish]];
  if (start === undefined || goal === undefined) return undefined;
  const poses: CandidatePose[] = [];
  for (const via of vias) {
    if ('near' in via) {
      poses.push(freePose(compose(via.near === 'begin' ? start.pose : goal.pose, via.local), query));
      continue;
    }
    const obstacle = obstacles.find((each) => each.obstacle.id === via.obstacle);
    const arcs = obstacle === undefined ? [] : cornerArcs(obstacle);
    const corner = arcs.find(({ vertex, side }) => vertex === via.vertex && side === via.side);
    if (corner === undefined) return undefined;
    poses.push(tangentPose(corner, via.share, query));
  }
  return [start, ...poses, goal];
}
