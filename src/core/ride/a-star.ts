/**
 * A* over poses. The heuristic is the length of the Dubins path to the end without obstacles. An edge is measured, and
 * then held against the obstacles, only when nothing cheaper is left. Poses may be added while the search runs: what
 * was reached before is reached anew where that is cheaper.
 */
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate } from '../plane/dubins.ts';
import { distance } from '../plane/point.ts';
import { normalizeAngle } from '../plane/pose.ts';
import type { CandidatePose } from './candidate-poses.ts';
import { priorityQueue } from './priority-queue.ts';
import {
  type ArcRoom,
  dubinsPathsByLength,
  edgeCost,
  isPrefixBlocked,
  isUsable,
  type RouteSearch,
  roomAt,
} from './search.ts';

/** Costs nearer than this are equal, metres. */
const SAME_COST: Metres = 1e-9;

/** A node with the cheapest way to it that is known. */
interface Reached {
  readonly candidate: CandidatePose;
  cost: Metres;
  parent: Reached | undefined;
  isSettled: boolean;
  /** Whether a horse can be there at all; looked at only when an edge to it has its turn. */
  isUsable: boolean | undefined;
  out: ArcRoom | undefined;
  into: ArcRoom | undefined;
}

/** The edges that leave a node and were not measured yet, by the least that a way through them costs. */
interface Outgoing {
  readonly from: Reached;
  /** What the node cost when they were put in order; a cheaper way to it puts them in order anew. */
  readonly cost: Metres;
  readonly edges: readonly { readonly to: Reached; readonly bound: Metres }[];
  next: number;
}

/** An edge that was measured: its paths, shortest first, and which of them is tried next. */
interface Edge {
  readonly from: Reached;
  readonly to: Reached;
  readonly paths: readonly DubinsCandidate[];
  readonly tried: number;
}

/** What waits for its turn: a measured edge, a node that was reached, or the next edge that leaves a node. */
type Waiting =
  | { readonly kind: 'edge'; readonly edge: Edge }
  | { readonly kind: 'reached'; readonly node: Reached }
  | { readonly kind: 'outgoing'; readonly outgoing: Outgoing };

/**
 * The poses of the cheapest way; none when there is no way. Undecided when the search used what it was given: with a way
 * where one was reached, though a cheaper one may exist.
 */
export type SearchResult =
  | { readonly kind: 'found'; readonly way: readonly CandidatePose[] }
  | { readonly kind: 'undecided'; readonly way: readonly CandidatePose[] | undefined }
  | { readonly kind: 'none' };

function nodeOf(candidate: CandidatePose, cost: Metres): Reached {
  const isUsable = candidate.end === undefined ? undefined : true;
  return { candidate, cost, parent: undefined, isSettled: false, isUsable, out: undefined, into: undefined };
}

function wayTo(goal: Reached | undefined): readonly CandidatePose[] | undefined {
  if (goal === undefined) return undefined;
  const way: CandidatePose[] = [];
  for (let at: Reached | undefined = goal; at !== undefined; at = at.parent) way.unshift(at.candidate);
  return way;
}

/** A search that can be stopped and continued. */
export interface AStar {
  /** Goes on until `budget` paths have been held against the obstacles in all; ways of `most` metres or more are of no use. */
  run(budget: number, most: Metres): SearchResult;
}

/** A search for the cheapest way. `added` gives the poses for what was met since it was asked last. */
export function aStar(search: RouteSearch, added: () => readonly CandidatePose[]): AStar {
  const { query } = search;
  const starts = search.starts.map((candidate) => nodeOf(candidate, candidate.end?.cost ?? 0));
  const goals = search.goals.map((candidate) => nodeOf(candidate, Number.POSITIVE_INFINITY));
  const nodes = [...starts, ...goals];
  const open = priorityQueue<Waiting>();
  /** The cheapest way that was reached, and what it costs. */
  let [best, most]: [Reached | undefined, Metres] = [undefined, Number.POSITIVE_INFINITY];

  /** No path is shorter than the straight, nor than the arc that turns from the one heading to the other. */
  const boundTo = (from: Reached, to: Reached): Metres => {
    if (from === to || to.isUsable === false) return Number.POSITIVE_INFINITY;
    const [a, b] = [from.candidate.pose, to.candidate.pose];
    const turn = query.radius * Math.abs(normalizeAngle(b.angle - a.angle));
    const cost = from.cost + Math.max(turn, distance(a, b));
    return cost >= to.cost - SAME_COST ? Number.POSITIVE_INFINITY : cost + to.candidate.heuristic;
  };
  const waitForNext = (outgoing: Outgoing): void => {
    const { edges } = outgoing;
    for (let edge = edges[outgoing.next]; edge !== undefined; edge = edges[outgoing.next]) {
      if (edge.bound >= most - SAME_COST) return;
      edge.to.isUsable ??= isUsable(search, edge.to.candidate);
      if (edge.to.isUsable) {
        open.add(edge.bound, { kind: 'outgoing', outgoing });
        return;
      }
      outgoing.next += 1;
    }
  };
  const spread = (from: Reached, targets: readonly Reached[]): void => {
    const edges: { readonly to: Reached; readonly bound: Metres }[] = [];
    for (const to of targets) {
      const bound = boundTo(from, to);
      if (bound < most - SAME_COST) edges.push({ to, bound });
    }
    waitForNext({ from, cost: from.cost, edges: edges.sort((a, b) => a.bound - b.bound), next: 0 });
  };
  const settle = (node: Reached): void => {
    node.isSettled = true;
    spread(node, nodes);
  };
  const grow = (): void => {
    const fresh = added().map((candidate) => nodeOf(candidate, Number.POSITIVE_INFINITY));
    if (fresh.length === 0) return;
    const before = [...nodes];
    nodes.push(...fresh);
    for (const node of before) if (node.isSettled) spread(node, fresh);
  };
  const waitForPath = (edge: Edge): void => {
    const path = edge.paths[edge.tried];
    if (path === undefined) return;
    const cost = edge.from.cost + path.length;
    const bound = cost + edge.to.candidate.heuristic;
    if (cost >= edge.to.cost - SAME_COST || bound >= most - SAME_COST) return;
    open.add(bound, { kind: 'edge', edge });
  };
  const openPaths = (from: Reached, to: Reached): readonly DubinsCandidate[] => {
    const all = dubinsPathsByLength(from.candidate.pose, to.candidate.pose, query.radius);
    // Two ends without anything in between: not worth a look at their arcs.
    if (!search.isBlocked) return all;
    // Near the start and near the goal a way may meet what it may not meet elsewhere: the room on an arc holds only where
    // the other end of the edge is neither.
    const isLast = to.candidate.end !== undefined;
    if (isLast && from.candidate.end !== undefined) return all;
    if (isLast) to.into ??= roomAt(search, to.candidate, true);
    else from.out ??= roomAt(search, from.candidate, false);
    grow();
    const [out, into] = isLast ? [undefined, to.into] : [from.out, undefined];
    return all.filter((each) => !isPrefixBlocked(each, query.radius, out, into));
  };
  const takeNext = (outgoing: Outgoing): void => {
    const { from, cost, edges, next } = outgoing;
    const edge = edges[next];
    if (edge === undefined || cost !== from.cost) return;
    outgoing.next += 1;
    waitForNext(outgoing);
    const { to } = edge;
    if (boundTo(from, to) < Number.POSITIVE_INFINITY) waitForPath({ from, to, paths: openPaths(from, to), tried: 0 });
  };
  const tryPath = (edge: Edge): void => {
    const { from, to, paths, tried } = edge;
    const dubins = paths[tried];
    if (dubins === undefined || from.cost + dubins.length >= to.cost - SAME_COST) return;
    waitForPath({ ...edge, tried: tried + 1 });
    const path = candidatePath(from.candidate.pose, dubins, query.radius);
    const penalty = edgeCost(search, path, [from.candidate, to.candidate]);
    grow();
    if (penalty === undefined) return;
    const cost = from.cost + dubins.length + penalty;
    if (cost >= to.cost - SAME_COST) return;
    to.cost = cost;
    to.parent = from;
    to.isSettled = false;
    const total = cost + to.candidate.heuristic;
    if (to.candidate.end !== undefined && total < most) [best, most] = [to, total];
    open.add(total, { kind: 'reached', node: to });
  };

  const isGoal = ({ candidate }: Reached): boolean => goals.some((goal) => goal.candidate === candidate);
  let isBegun = false;
  return {
    run(budget, bound) {
      most = Math.min(most, bound);
      if (!isBegun) {
        grow();
        for (const start of starts) settle(start);
        isBegun = true;
      }
      for (;;) {
        if (search.count > budget) return { kind: 'undecided', way: wayTo(best) };
        const next = open.next();
        if (next === undefined) break;
        const { item } = next;
        if (item.kind === 'edge') tryPath(item.edge);
        else if (item.kind === 'outgoing') takeNext(item.outgoing);
        else if (isGoal(item.node)) break;
        else if (!item.node.isSettled) settle(item.node);
      }
      const way = wayTo(best);
      return way === undefined ? { kind: 'none' } : { kind: 'found', way };
    },
  };
}
