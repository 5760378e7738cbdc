/** The shortest way around obstacles: over the corners of what is in the way. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath } from '../plane/dubins.ts';
import { type Path, pathFrom, reversedPath } from '../plane/path.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import { aStar } from './a-star.ts';
import { type CandidatePose, goalPose, posesNearEnds, startPose, tangentPoses } from './candidate-poses.ts';
import { cornerArcs } from './corner-arcs.ts';
import { type Detour, detourPoses, detourThrough, reversedDetour } from './detour.ts';
import { reversedEnd, type WayEnd } from './end-straights.ts';
import { type DetourQuery, dubinsPathsByLength, edgeCost, edgePath, isClear, type RouteSearch } from './search.ts';

/** How a way's poses are refined: the first step, halved in each round. */
interface Refinement {
  readonly rounds: number;
  readonly firstStep: number;
}
const AFTER_SEARCH: Refinement = { rounds: 6, firstStep: 0.25 };
/** A way that is laid anew is near its best already. */
const LAID_ANEW: Refinement = { rounds: 3, firstStep: 0.08 };

export interface Route {
  /** Its length with the cost of its ends, and the same with what it costs to come near things, metres. */
  readonly length: Metres;
  readonly cost: Metres;
  /** From end to end, with the straights. */
  readonly path: Path;
  readonly detour: Detour;
}

/** The result, and the box of all that the search looked at. */
export interface RouteResult {
  readonly route: Route | undefined;
  readonly exploredBounds: Bounds | undefined;
}

type LaidRoute = Omit<Route, 'detour'>;

/** The shortest way from node to node that meets nothing. */
function routeThrough(search: RouteSearch, poses: readonly CandidatePose[]): LaidRoute | undefined {
  const ends = (poses[0]?.end?.cost ?? 0) + (poses.at(-1)?.end?.cost ?? 0);
  let [length, cost] = [ends, ends];
  const path: Path[number][] = [];
  for (const [i, to] of poses.slice(1).entries()) {
    const from = poses[i];
    if (from === undefined) return undefined;
    let found = false;
    for (const dubins of dubinsPathsByLength(from.pose, to.pose, search.query.radius)) {
      const edge = candidatePath(from.pose, dubins, search.query.radius);
      const penalty = edgeCost(search, edge, [from, to]);
      if (penalty === undefined) continue;
      length += dubins.length;
      cost += dubins.length + penalty;
      path.push(...edgePath(edge, from.end, to.end));
      found = true;
      break;
    }
    if (!found) return undefined;
  }
  return { length, cost, path };
}

/** The way with each of its poses moved to where the whole is cheapest (coordinate descent). */
function refinedRoute(
  search: RouteSearch,
  found: readonly CandidatePose[],
  { rounds, firstStep }: Refinement,
): Route | undefined {
  let poses = found;
  let best = routeThrough(search, poses);
  let step = firstStep;
  for (let round = 0; round < rounds && poses.length > 2; round += 1) {
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
  return best === undefined ? undefined : { ...best, detour: detourThrough(search, poses) };
}

function reversedRoute(route: Route): Route {
  return { ...route, path: reversedPath(route.path), detour: reversedDetour(route.detour) };
}

/** The steps by which one pose of a way is moved where the way is no longer clear, smallest first. */
const MEND_STEPS = [0.04, 0.1, 0.2];

/** The poses, with one of them moved a little where the way through them is not clear; undefined when that is not enough. */
function clearPoses(search: RouteSearch, poses: readonly CandidatePose[]): readonly CandidatePose[] | undefined {
  if (routeThrough(search, poses) !== undefined) return poses;
  for (const step of MEND_STEPS) {
    for (const i of poses.keys()) {
      for (const pose of poses[i]?.neighbours(step) ?? []) {
        const moved = poses.with(i, pose);
        if (routeThrough(search, moved) !== undefined) return moved;
      }
    }
  }
  return undefined;
}

/** A way laid around the same corners as it was, where they are now; undefined when it is not clear so. */
export function laidAnew(query: DetourQuery, detour: Detour, obstacles: readonly PlacedObstacle[]): Route | undefined {
  const search = newSearch(query, new Set());
  const before = detourPoses(search, detour, obstacles);
  const poses = before === undefined ? undefined : clearPoses(search, before);
  return poses === undefined ? undefined : refinedRoute(search, poses, LAID_ANEW);
}

/** The same question asked from the end. */
function reversedQuery(query: DetourQuery): DetourQuery {
  return {
    ...query,
    begins: query.finishes.map(reversedEnd),
    finishes: query.begins.map(reversedEnd),
    pathCost: (path, { first, last }, among) => query.pathCost(reversedPath(path), { first: last, last: first }, among),
  };
}

function newSearch(query: DetourQuery, hits: Set<PlacedObstacle>): RouteSearch {
  const starts = query.begins.map((end) => startPose(end, query));
  const goals = query.finishes.map(goalPose);
  return { query, starts, goals, hits, exploredBounds: undefined, isBlocked: false, count: 0 };
}

/** Gives the poses for what a search has met since it was asked last. */
function poseSource(search: RouteSearch): () => readonly CandidatePose[] {
  const { query, hits } = search;
  const known = new Set<PlacedObstacle>();
  let nearEnds = false;
  return () => {
    if (nearEnds === search.isBlocked && hits.size === known.size) return [];
    const fresh = [...hits].filter((obstacle) => !known.has(obstacle));
    for (const obstacle of fresh) known.add(obstacle);
    const corners = fresh.flatMap((obstacle) => cornerArcs(obstacle).flatMap((corner) => tangentPoses(corner, query)));
    const near = search.isBlocked && !nearEnds ? posesNearEnds(query.begins, query) : [];
    nearEnds = search.isBlocked;
    return [...near, ...corners];
  };
}

/** What the straights at one end meet where each of them meets something, so that no way is clear; else undefined. */
function shutEnd({ pathCost }: DetourQuery, ends: readonly WayEnd[]): Bounds | undefined {
  let looked: Bounds | undefined;
  for (const { pose, straight } of ends) {
    // Both ends' pieces are let pass, as on the whole way or further.
    const result = pathCost(straight.length > 0 ? straight : pathFrom(pose, []), { first: true, last: true });
    if (isClear(result)) return undefined;
    looked = looked === undefined ? result.bounds : unionBounds(looked, result.bounds);
  }
  return looked;
}

/**
 * The shortest way at a radius that goes clear around everything; no route when none is cheaper than the given cost.
 * It is sought from the start and from the end by turns: where one of them is shut in, the search from there says so soon.
 */
export function shortestRoute(query: DetourQuery): RouteResult {
  const shut = shutEnd(query, query.begins) ?? shutEnd(query, query.finishes);
  if (shut !== undefined) return { route: undefined, exploredBounds: shut };
  const hits = new Set(query.avoid);
  const searches = [query, reversedQuery(query)].map((each) => newSearch(each, hits));
  const runs = searches.map((search) => aStar(search, poseSource(search)));
  let route: Route | undefined;
  for (const [turn, budget] of query.budgets.entries()) {
    const [search, run] = [searches[turn % 2], runs[turn % 2]];
    const result = run?.run(budget, route?.cost ?? query.most);
    if (search === undefined || result === undefined) break;
    const found =
      result.kind === 'none' || result.way === undefined ? undefined : refinedRoute(search, result.way, AFTER_SEARCH);
    if (found !== undefined && found.cost < (route?.cost ?? Number.POSITIVE_INFINITY)) {
      route = turn % 2 === 0 ? found : reversedRoute(found);
    }
    if (result.kind !== 'undecided') break;
  }
  return { route, exploredBounds: combinedBounds(searches) };
}

/** The box of all that the searches have looked at. */
function combinedBounds(searches: readonly RouteSearch[]): Bounds | undefined {
  const explored = searches.flatMap(({ exploredBounds }) => exploredBounds ?? []);
  return explored.length === 0 ? undefined : explored.reduce(unionBounds);
}
