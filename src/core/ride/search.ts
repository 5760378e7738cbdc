/**
 * A* over poses. Every edge is a Dubins path at the radius asked for; the heuristic is the length of the Dubins path to
 * the end without obstacles. An edge is held against the obstacles only when nothing cheaper is left, and poses may be
 * added while the search runs: what was reached before is then reached anew where that is cheaper.
 */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import { type Path, poseOn } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import type { CandidatePose } from './candidate-poses.ts';
import type { PathCost } from './collision-cost.ts';
import { priorityQueue } from './priority-queue.ts';

/** A blocked arc is halved so many times to find how far it is clear. */
const HALVINGS = 5;
/** Ways shorter than this have no direction, metres. */
const STUB: Metres = 0.01;
/** Costs nearer than this are equal, metres. */
const SAME_COST: Metres = 1e-9;

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

/** The state of one search: its two ends, what was met, and how much was held against the obstacles. */
export interface RouteSearch {
  readonly query: DetourQuery;
  readonly start: CandidatePose;
  readonly goal: CandidatePose;
  readonly hits: Set<PlacedObstacle>;
  exploredBounds: Bounds | undefined;
  /** Whether any edge was blocked: then the two ends alone are not enough. */
  isBlocked: boolean;
  count: number;
}

/** How far, at the most, the horse can go on either arc, metres: infinite where the whole circle is clear. */
interface ArcRoom {
  readonly L: Metres;
  readonly R: Metres;
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
  if (hits.length === 0 && !leavesArena) return penalty;
  search.isBlocked = true;
  return undefined;
}

/** The room on one arc that leaves a node, or that comes in to it when `incoming`. */
function arcRoom(
  search: RouteSearch,
  node: CandidatePose,
  { curvature, incoming }: { readonly curvature: number; readonly incoming: boolean },
): Metres {
  const isClear = (length: Metres): boolean => {
    const forward = { start: node.pose, length, curvature };
    const start = incoming ? poseOn(forward, -length) : node.pose;
    const ends = incoming ? ([NOWHERE, node] as const) : ([node, NOWHERE] as const);
    return edgeCost(search, [{ start, length, curvature }], ends) !== undefined;
  };
  let [low, high] = [0, (2 * Math.PI) / Math.abs(curvature)];
  if (isClear(high)) return Number.POSITIVE_INFINITY;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (isClear(middle)) low = middle;
    else high = middle;
  }
  return high;
}

function roomAt(search: RouteSearch, node: CandidatePose, incoming: boolean): ArcRoom {
  const curvature = 1 / search.query.radius;
  return {
    L: arcRoom(search, node, { curvature, incoming }),
    R: arcRoom(search, node, { curvature: -curvature, incoming }),
  };
}

/** Whether an arc of the path is longer than the room that its node has on that side. */
function isPrefixBlocked({ word, parts }: DubinsCandidate, radius: Metres, out: ArcRoom, into: ArcRoom | undefined) {
  const [first, , last] = parts;
  const [begin, end] = [word[0] === 'L' ? 'L' : 'R', word[2] === 'L' ? 'L' : 'R'] as const;
  return first * radius > out[begin] || (into !== undefined && last * radius > into[end]);
}

/** The far end of an arc that is looked at alone. */
const NOWHERE: CandidatePose = { pose: { x: 0, y: 0, angle: 0 }, heuristic: 0, neighbours: () => [] };

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

/** An edge that waits: its two nodes, and its paths that were not tried yet; undefined before they are measured. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly cost: Metres;
  readonly paths: readonly DubinsCandidate[] | undefined;
  readonly tried: number;
}

/** The poses of a way; none when there is no way; undecided when the search used what it was given. */
export type SearchResult =
  | { readonly kind: 'found'; readonly way: readonly CandidatePose[] }
  | { readonly kind: 'none' | 'undecided' };

/**
 * The cheapest way below the query's most. `added` gives the poses for what was met since it was asked last; `budget`
 * is how many paths may be held against the obstacles.
 */
export function aStar(search: RouteSearch, added: () => readonly CandidatePose[], budget: number): SearchResult {
  const { query, start, goal } = search;
  const nodes: CandidatePose[] = [start, goal];
  const reached: Metres[] = [0, query.most];
  const parents: number[] = [-1, -1];
  const settled: boolean[] = [false, false];
  const waiting: Edge[] = [];
  const open = priorityQueue<number>();
  const push = (edge: Edge, heuristic: Metres): void => {
    const bound = edge.cost + heuristic;
    if (bound >= (reached[1] ?? 0) - SAME_COST || edge.cost >= (reached[edge.to] ?? 0) - SAME_COST) return;
    open.add(bound, waiting.length);
    waiting.push(edge);
  };
  const pushEdge = (from: number, to: number): void => {
    const [a, b] = [nodes[from], nodes[to]];
    if (a === undefined || b === undefined || from === to) return;
    // The straight is a lower bound of every path.
    const straight = Math.hypot(b.pose.x - a.pose.x, b.pose.y - a.pose.y);
    push({ from, to, cost: (reached[from] ?? 0) + straight, paths: undefined, tried: 0 }, b.heuristic);
  };
  const rooms: (ArcRoom | undefined)[] = [];
  let intoGoal: ArcRoom | undefined;
  const settle = (from: number): void => {
    settled[from] = true;
    for (let to = 1; to < nodes.length; to += 1) pushEdge(from, to);
  };
  const grow = (): void => {
    for (const node of added()) {
      const to = nodes.push(node) - 1;
      reached.push(Number.POSITIVE_INFINITY);
      parents.push(-1);
      settled.push(false);
      for (let from = 0; from < to; from += 1) if (settled[from] === true) pushEdge(from, to);
    }
  };
  const openPaths = ({ from, to }: Edge): readonly DubinsCandidate[] => {
    const [a, b] = [nodes[from] ?? start, nodes[to] ?? goal];
    const all = dubinsPathsByLength(a.pose, b.pose, query.radius);
    // Two ends without anything in between: not worth a look at their arcs.
    if (!search.isBlocked) return all;
    rooms[from] ??= roomAt(search, a, false);
    if (to === 1) intoGoal ??= roomAt(search, goal, true);
    grow();
    const out = rooms[from];
    return all.filter(
      (each) => out === undefined || !isPrefixBlocked(each, query.radius, out, to === 1 ? intoGoal : undefined),
    );
  };
  grow();
  settle(0);
  // An item below 0 is a node that was reached; the others are edges.
  for (let next = open.next(); next !== undefined; next = open.next()) {
    const { item } = next;
    if (search.count > budget) return { kind: 'undecided' };
    if (item < 0) {
      const node = -item;
      if (node === 1) break;
      if (settled[node] !== true) settle(node);
      continue;
    }
    const edge = waiting[item];
    const [from, to] = [nodes[edge?.from ?? 0], nodes[edge?.to ?? 0]];
    if (edge === undefined || from === undefined || to === undefined) continue;
    const begun = reached[edge.from] ?? 0;
    if (edge.cost >= (reached[edge.to] ?? 0) - SAME_COST) continue;
    const paths = edge.paths ?? openPaths(edge);
    const tryPath = (tried: number): void => {
      const path = paths[tried];
      if (path !== undefined) push({ ...edge, cost: begun + path.length, paths, tried }, to.heuristic);
    };
    if (edge.paths === undefined) {
      tryPath(0);
      continue;
    }
    const dubins = paths[edge.tried];
    tryPath(edge.tried + 1);
    if (dubins === undefined) continue;
    const penalty = edgeCost(search, candidatePath(from.pose, dubins, query.radius), [from, to]);
    grow();
    if (penalty === undefined) continue;
    const cost = begun + dubins.length + penalty;
    if (cost >= (reached[edge.to] ?? 0) - SAME_COST) continue;
    reached[edge.to] = cost;
    parents[edge.to] = edge.from;
    settled[edge.to] = false;
    open.add(cost + to.heuristic, -edge.to);
  }
  if (parents[1] === -1) return { kind: 'none' };
  const way: CandidatePose[] = [];
  for (let at = 1; at !== -1; at = parents[at] ?? -1) {
    const node = nodes[at];
    if (node !== undefined) way.unshift(node);
  }
  return { kind: 'found', way };
}
