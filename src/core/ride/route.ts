/** The shortest way around obstacles: over the corners of what is in the way. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath } from '../plane/dubins.ts';
import type { Path } from '../plane/path.ts';
import type { Bounds } from '../plane/ring.ts';
import { type CandidatePose, candidatePose, posesNearEnds, tangentPoses } from './candidate-poses.ts';
import { cornerArcs } from './corner-arcs.ts';
import {
  aStar,
  type DetourQuery,
  dubinsPathsByLength,
  edgeCost,
  isUsable,
  type RouteSearch,
  type SearchNode,
} from './search.ts';

/** Steps of the refinement of the best way's poses. */
const REFINE_ROUNDS = 6;
const FIRST_STEP = 0.25;

interface Route {
  /** Length in metres, and penalty beside it. */
  readonly length: Metres;
  readonly cost: Metres;
  readonly path: Path;
}

/** The result, and the box of all that the search looked at. */
export interface RouteResult {
  readonly route: Route | undefined;
  readonly exploredBounds: Bounds | undefined;
}

function nodesTo(last: SearchNode | undefined): SearchNode[] {
  const found: SearchNode[] = [];
  for (let at = last; at?.parent !== undefined; at = at.parent) found.unshift(at);
  return found;
}

/** The shortest way from node to node that meets nothing. */
function routeThrough(search: RouteSearch, poses: readonly CandidatePose[]): Route | undefined {
  let [length, cost] = [0, 0];
  const path: Path[number][] = [];
  for (const [i, to] of poses.slice(1).entries()) {
    const from = poses[i] ?? search.start;
    let found = false;
    for (const dubins of dubinsPathsByLength(from.pose, to.pose, search.query.radius)) {
      const edge = candidatePath(from.pose, dubins, search.query.radius);
      const penalty = edgeCost(search, edge, [from, to]);
      if (penalty === undefined) continue;
      length += dubins.length;
      cost += dubins.length + penalty;
      path.push(...edge);
      found = true;
      break;
    }
    if (!found) return undefined;
  }
  return { length, cost, path };
}

/** The way with each of its poses moved to where the whole is cheapest (coordinate descent). */
function refinedRoute(search: RouteSearch, last: SearchNode): Route | undefined {
  let poses: readonly CandidatePose[] = [search.start, ...nodesTo(last).map(({ candidate }) => candidate)];
  let best = routeThrough(search, poses);
  let step = FIRST_STEP;
  for (let round = 0; round < REFINE_ROUNDS && poses.length > 2; round += 1) {
    for (const i of poses.keys()) {
      for (const pose of poses[i]?.neighbours(step) ?? []) {
        const tried = poses.with(i, pose);
        const now = routeThrough(search, tried);
        if (now === undefined || best === undefined || now.cost >= best.cost) continue;
        best = now;
        poses = tried;
      }
    }
    step /= 2;
  }
  return best;
}

/**
 * The shortest way at a radius that goes clear around everything; no route when none is cheaper than the given cost.
 * What the edges meet is added to the obstacles and searched again, until nothing new is met.
 */
export function shortestRoute(query: DetourQuery): RouteResult {
  const avoid = new Set(query.avoid);
  const start = candidatePose(query.begin, query);
  const goal = { ...candidatePose(query.finish, query), heuristic: 0 };
  const search: RouteSearch = { query, start, goal, hits: new Set(), exploredBounds: undefined, count: 0 };
  const usable = (all: readonly CandidatePose[]): CandidatePose[] => all.filter((place) => isUsable(search, place));
  const near = usable(posesNearEnds(query.begin, query));
  const corners = new Map<PlacedObstacle, readonly CandidatePose[]>();
  for (;;) {
    for (const obstacle of avoid) {
      if (corners.has(obstacle)) continue;
      const all = cornerArcs(obstacle).flatMap((corner) => tangentPoses(corner, query));
      corners.set(obstacle, usable(all));
    }
    search.count = 0;
    const last = aStar(search, [...corners.values(), near].flat());
    const fresh = [...search.hits].filter((obstacle) => !avoid.has(obstacle));
    for (const obstacle of fresh) avoid.add(obstacle);
    if (fresh.length > 0) continue;
    return {
      route: last === undefined ? undefined : refinedRoute(search, last),
      exploredBounds: search.exploredBounds,
    };
  }
}
