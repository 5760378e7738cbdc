/**
 * A* over poses. Every edge is a Dubins path at the radius asked for; the heuristic is the length of the Dubins path to
 * the end without obstacles.
 */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import type { Path } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import type { CandidatePose } from './candidate-poses.ts';
import type { PathCost } from './collision-cost.ts';
import { priorityQueue } from './priority-queue.ts';

/** At most this many edges are checked for collisions: a query that needs more has no way that a horse would take. */
const MOST_EDGES = 1500;
/** Ways shorter than this have no direction, metres. */
const STUB: Metres = 0.01;

export interface DetourQuery {
  readonly begin: Pose;
  readonly finish: Pose;
  readonly radius: Metres;
  /** What the way has to go around, as far as is known; more is added when edges meet it. */
  readonly avoid: readonly PlacedObstacle[];
  /** The most that the way may cost, metres; anything dearer is of no use. */
  readonly most: Metres;
  /** What an edge meets; `first` and `last` when it begins or ends the way. */
  pathCost(path: Path, ends: EdgeEnds): PathCost;
}

interface EdgeEnds {
  readonly first: boolean;
  readonly last: boolean;
}

export interface SearchNode {
  readonly candidate: CandidatePose;
  readonly cost: Metres;
  readonly length: Metres;
  readonly path: Path;
  readonly parent?: SearchNode;
}

/** An entry of the open list: an edge that was not measured yet, its next path, or a node that an edge has reached. */
type OpenEntry =
  | { readonly kind: 'edge'; readonly from: SearchNode; readonly to: CandidatePose }
  | {
      readonly kind: 'paths';
      readonly from: SearchNode;
      readonly to: CandidatePose;
      readonly paths: readonly DubinsCandidate[];
    }
  | { readonly kind: 'node'; readonly node: SearchNode };

/** The state of one search: its two ends, the costs of edges, and what was met. */
export interface RouteSearch {
  readonly query: DetourQuery;
  readonly start: CandidatePose;
  readonly goal: CandidatePose;
  readonly hits: Set<PlacedObstacle>;
  exploredBounds: Bounds | undefined;
  count: number;
}

/** The penalty of a path; undefined when it meets something or leaves the arena. */
export function edgeCost(
  search: RouteSearch,
  path: Path,
  [from, to]: readonly [CandidatePose, CandidatePose],
): Metres | undefined {
  search.count += 1;
  const ends = { first: from === search.start, last: to === search.goal };
  const { penalty, hits, bounds, leavesArena } = search.query.pathCost(path, ends);
  search.exploredBounds = search.exploredBounds === undefined ? bounds : unionBounds(search.exploredBounds, bounds);
  for (const obstacle of hits) search.hits.add(obstacle);
  return hits.length > 0 || leavesArena ? undefined : penalty;
}

/** Whether a horse can be at this pose at all. */
export function isUsable({ query }: RouteSearch, { pose }: CandidatePose): boolean {
  const { hits, leavesArena } = query.pathCost([{ start: pose, length: STUB, curvature: 0 }], {
    first: false,
    last: false,
  });
  return hits.length === 0 && !leavesArena;
}

export function dubinsPathsByLength(from: Pose, to: Pose, radius: Metres): DubinsCandidate[] {
  return dubinsCandidates(from, to, radius).sort((a, b) => a.length - b.length);
}

/** The cheapest path of an edge that is left, checked for collisions: its node is reached at that cost. */
function successor(
  search: RouteSearch,
  from: SearchNode,
  to: CandidatePose,
  dubins: DubinsCandidate,
): SearchNode | undefined {
  const path = candidatePath(from.candidate.pose, dubins, search.query.radius);
  const penalty = edgeCost(search, path, [from.candidate, to]);
  if (penalty === undefined) return undefined;
  return {
    candidate: to,
    cost: from.cost + dubins.length + penalty,
    length: from.length + dubins.length,
    path,
    parent: from,
  };
}

/** The cheapest way through the given nodes. Entries are expanded in the order of their lower bound. */
export function aStar(search: RouteSearch, candidates: readonly CandidatePose[]): SearchNode | undefined {
  const { query, start, goal } = search;
  const open = priorityQueue<OpenEntry>();
  const settled = new Set<CandidatePose>();
  const push = (cost: Metres, item: OpenEntry): void => {
    if (cost < query.most) open.add(cost, item);
  };
  const pushPaths = (from: SearchNode, to: CandidatePose, paths: readonly DubinsCandidate[]): void => {
    const [shortest] = paths;
    if (shortest !== undefined) push(from.cost + shortest.length + to.heuristic, { kind: 'paths', from, to, paths });
  };
  const settle = (from: SearchNode): void => {
    settled.add(from.candidate);
    const { x, y } = from.candidate.pose;
    for (const to of candidates) {
      // The straight is a lower bound of every path.
      const straight = Math.hypot(to.pose.x - x, to.pose.y - y);
      if (!settled.has(to)) push(from.cost + straight + to.heuristic, { kind: 'edge', from, to });
    }
    pushPaths(from, goal, dubinsPathsByLength(from.candidate.pose, goal.pose, query.radius));
  };
  settle({ candidate: start, cost: 0, length: 0, path: [] });
  for (let next = open.next(); next !== undefined && search.count <= MOST_EDGES; next = open.next()) {
    const { item } = next;
    const to = item.kind === 'node' ? item.node.candidate : item.to;
    if (settled.has(to)) continue;
    if (item.kind === 'node') {
      if (to === goal) return item.node;
      settle(item.node);
    } else if (item.kind === 'edge') {
      pushPaths(item.from, to, dubinsPathsByLength(item.from.candidate.pose, to.pose, query.radius));
    } else {
      const [dubins, ...others] = item.paths;
      pushPaths(item.from, to, others);
      const node = dubins === undefined ? undefined : successor(search, item.from, to, dubins);
      if (node !== undefined) push(node.cost + to.heuristic, { kind: 'node', node });
    }
  }
  return undefined;
}
