/** What a search for a way is asked and what it has met; its edges are Dubins paths at the radius asked for. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import { type Path, poseOn } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import type { CandidatePose } from './candidate-poses.ts';
import type { PathCost } from './collision-cost.ts';
import type { WayEnd } from './end-straights.ts';

/** A blocked arc is halved so many times to find how far it is clear. */
const HALVINGS = 5;
/** Ways shorter than this have no direction, metres. */
const STUB: Metres = 0.01;

export interface DetourQuery {
  /** The choices for its beginning and for its end. */
  readonly begins: readonly WayEnd[];
  readonly finishes: readonly WayEnd[];
  readonly radius: Metres;
  /** What the way has to go around, as far as is known; more is added when edges meet it. */
  readonly avoid: readonly PlacedObstacle[];
  /** The most that the way may cost, metres; anything dearer is of no use. */
  readonly most: Metres;
  /** How many paths each search may hold against the obstacles in all, turn by turn: from the start, from the end … */
  readonly budgets: readonly number[];
  /** What an edge meets `among` some obstacles, or all; `first` and `last` when it begins or ends the way. */
  pathCost(path: Path, ends: EdgeEnds, among?: readonly PlacedObstacle[]): PathCost;
}

/** Whether an edge begins the way, and whether it ends it. */
export interface EdgeEnds {
  readonly first: boolean;
  readonly last: boolean;
}

/** The state of one search: its ends, what was met, and how much was held against the obstacles. */
export interface RouteSearch {
  readonly query: DetourQuery;
  readonly starts: readonly CandidatePose[];
  readonly goals: readonly CandidatePose[];
  readonly hits: Set<PlacedObstacle>;
  exploredBounds: Bounds | undefined;
  /** Whether any edge was blocked: then the two ends alone are not enough. */
  isBlocked: boolean;
  count: number;
}

/** How far, at the most, the horse can go on either arc, metres: infinite where the whole circle is clear. */
export interface ArcRoom {
  readonly L: Metres;
  readonly R: Metres;
}

/** The path of an edge with the straights of the ends it has. */
export function edgePath(path: Path, from: WayEnd | undefined, to: WayEnd | undefined): Path {
  if (from === undefined && to === undefined) return path;
  return [...(from?.straight ?? []), ...path, ...(to?.straight ?? [])];
}

/** What a path meets, noted in the search. */
function edgeResult(search: RouteSearch, path: Path, [from, to]: readonly [CandidatePose, CandidatePose]): PathCost {
  search.count += 1;
  const ends = { first: from.end !== undefined, last: to.end !== undefined };
  const result = search.query.pathCost(edgePath(path, from.end, to.end), ends);
  const { hits, bounds } = result;
  search.exploredBounds = search.exploredBounds === undefined ? bounds : unionBounds(search.exploredBounds, bounds);
  for (const obstacle of hits) search.hits.add(obstacle);
  if (!isClear(result)) search.isBlocked = true;
  return result;
}

export function isClear({ hits, leavesArena }: PathCost): boolean {
  return hits.length === 0 && !leavesArena;
}

/** The penalty of a path; undefined when it meets something or leaves the arena. */
export function edgeCost(
  search: RouteSearch,
  path: Path,
  ends: readonly [CandidatePose, CandidatePose],
): Metres | undefined {
  const result = edgeResult(search, path, ends);
  return isClear(result) ? result.penalty : undefined;
}

/** The room on one arc that leaves a node, or that comes in to it when `incoming`. */
function arcRoom(
  search: RouteSearch,
  node: CandidatePose,
  { curvature, incoming }: { readonly curvature: number; readonly incoming: boolean },
): Metres {
  const arc = (length: Metres): Path => {
    const start = incoming ? poseOn({ start: node.pose, length, curvature }, -length) : node.pose;
    return [{ start, length, curvature }];
  };
  const [from, to] = incoming ? [NOWHERE, node] : [node, NOWHERE];
  let [low, high] = [0, (2 * Math.PI) / Math.abs(curvature)];
  const circle = edgeResult(search, arc(high), [from, to]);
  if (isClear(circle)) return Number.POSITIVE_INFINITY;
  // A part of the circle meets nothing that the circle does not.
  const ends = { first: from.end !== undefined, last: to.end !== undefined };
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (isClear(search.query.pathCost(edgePath(arc(middle), from.end, to.end), ends, circle.hits))) low = middle;
    else high = middle;
  }
  return high;
}

export function roomAt(search: RouteSearch, node: CandidatePose, incoming: boolean): ArcRoom {
  const curvature = 1 / search.query.radius;
  return {
    L: arcRoom(search, node, { curvature, incoming }),
    R: arcRoom(search, node, { curvature: -curvature, incoming }),
  };
}

/** Whether an arc of the path is longer than the room that its node has on that side. */
export function isPrefixBlocked(
  { word, parts }: DubinsCandidate,
  radius: Metres,
  out: ArcRoom | undefined,
  into: ArcRoom | undefined,
): boolean {
  const [first, , last] = parts;
  const [begin, end] = [word[0] === 'L' ? 'L' : 'R', word[2] === 'L' ? 'L' : 'R'] as const;
  return (out !== undefined && first * radius > out[begin]) || (into !== undefined && last * radius > into[end]);
}

/** The far end of an arc that is looked at alone. */
const NOWHERE: CandidatePose = { pose: { x: 0, y: 0, angle: 0 }, heuristic: 0, neighbours: () => [] };

/** Whether a horse can be at this pose at all. */
export function isUsable({ query }: RouteSearch, { pose }: CandidatePose): boolean {
  return isClear(query.pathCost([{ start: pose, length: STUB, curvature: 0 }], { first: false, last: false }));
}

export function dubinsPathsByLength(from: Pose, to: Pose, radius: Metres): DubinsCandidate[] {
  return dubinsCandidates(from, to, radius).sort((a, b) => a.length - b.length);
}
