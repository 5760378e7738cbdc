import type { PlacedPiece } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import { dubinsThroughWaypoints } from '../plane/dubins-waypoints.ts';
import { type Path, totalTurn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import { type PathCost, pathCost, type RouteContext } from './collision-cost.ts';
import { type EndStraights, endStraightChoices, withStraights } from './end-straights.ts';
import { shortestRoute } from './route.ts';

/** A query for the way between two obstacles. */
export interface RouteQuery {
  readonly from: Pose;
  readonly to: Pose;
  readonly gait: Gait;
  readonly horse: Horse;
  readonly bends: readonly Point[];
  /** Whether the horse wants to be straight after the one obstacle and before the other. */
  readonly straightAfter: boolean;
  readonly straightBefore: boolean;
}

/** Why no way is clear: the piece that the least bad way meets, or none where it leaves the arena. */
export interface Blockage {
  readonly piece: PlacedPiece | undefined;
}

/** A way, and the box of all that the search looked at: a change outside the box cannot change the result. */
export interface Approach {
  readonly path: Path;
  readonly exploredBounds: Bounds;
  /** Absent for a clear way, and for one with bends that the designer has placed. */
  readonly blocked?: Blockage;
}

/**
 * Penalties, in metres of way: for each metre of radius that is missing, and for each radian of circling. Estimates.
 */
const PENALTY = { radius: 1.5, circling: 3 };
/** A way turns this much before it counts as circling. */
const CIRCLING_TURN = 1.25 * Math.PI;
/** How many horse's lengths are kept straight at an end: one is wanted. */
const SHARES = [1, 0.5, 0];
/** At most this many candidates are checked for collisions. */
const MOST_TRIED = 60;

/** A candidate way. Most are never laid out, so it only says how to make the path. */
interface PathCandidate {
  readonly cost: Metres;
  readonly straights: EndStraights;
  readonly middle: Path | { readonly dubins: DubinsCandidate; readonly radius: Metres };
}

function straightChoices(query: RouteQuery, shares: readonly number[]): EndStraights[] {
  return endStraightChoices({ ...query, unit: query.horse.bodyLength.value }, shares);
}

/** The radii a way may turn on, easy first. */
function radii({ gait, horse }: RouteQuery): Metres[] {
  const easy = preferredTurnRadius(horse, gait);
  const least = Math.min(easy, minTurnRadius(horse, gait));
  return [...new Set([easy, (easy + least) / 2, least])];
}

function circling(turn: number): Metres {
  return PENALTY.circling * Math.max(0, turn - CIRCLING_TURN);
}

function pathCandidates(query: RouteQuery, shares: readonly number[]): PathCandidate[] {
  const choices = radii(query);
  const widest = choices[0] ?? 0;
  const found: PathCandidate[] = [];
  for (const each of straightChoices(query, shares)) {
    const { begin, finish } = each;
    for (const radius of choices) {
      const base = each.cost + PENALTY.radius * (widest - radius);
      for (const dubins of dubinsCandidates(begin, finish, radius)) {
        const [first, middle, last] = dubins.parts;
        const turn = first + last + (dubins.word[1] === 'S' ? 0 : middle);
        found.push({ cost: dubins.length + base + circling(turn), straights: each, middle: { dubins, radius } });
      }
    }
  }
  return found;
}

function approachPath({ straights, middle }: PathCandidate): Path {
  return withStraights(
    straights,
    'dubins' in middle ? candidatePath(straights.begin, middle.dubins, middle.radius) : middle,
  );
}

interface BestPath {
  readonly cost: Metres;
  readonly path: Path;
  readonly pathCost: PathCost;
}

/**
 * The best of the candidates and an incumbent: a candidate is checked for collisions only while its lower bound is
 * below the best cost.
 */
function bestPath(
  options: PathCandidate[],
  context: RouteContext,
  already?: BestPath,
): { best: BestPath; exploredBounds: Bounds } {
  let best = already;
  let exploredBounds = already?.pathCost.bounds;
  const sorted = options.sort((a, b) => a.cost - b.cost).slice(0, MOST_TRIED);
  for (const candidate of sorted) {
    if (best !== undefined && candidate.cost >= best.cost) break;
    const path = approachPath(candidate);
    const found = pathCost(path, context);
    exploredBounds = exploredBounds === undefined ? found.bounds : unionBounds(exploredBounds, found.bounds);
    const cost = candidate.cost + found.penalty;
    if (best === undefined || cost < best.cost) best = { cost, path, pathCost: found };
  }
  if (best === undefined || exploredBounds === undefined)
    throw new Error('approach: no way was found, which geometry forbids');
  return { best, exploredBounds };
}

/**
 * With bends the designer has chosen the way. This search is expensive, so the first collision-free result is taken.
 */
function throughBends(query: RouteQuery, context: RouteContext): Approach {
  let found: { best: BestPath; exploredBounds: Bounds } | undefined;
  const all = straightChoices(query, [1, 0]);
  const [straight, bare] = [all[0], all.at(-1)];
  const choices = radii(query);
  for (const each of new Set([straight, bare])) {
    for (const radius of new Set([choices[0], choices.at(-1)])) {
      if (each === undefined || radius === undefined) continue;
      const { length, path } = dubinsThroughWaypoints(each.begin, query.bends, each.finish, radius);
      const candidate = { cost: length + each.cost + circling(totalTurn(path)), straights: each, middle: path };
      const now = bestPath([candidate], context, found?.best);
      found = {
        best: now.best,
        exploredBounds:
          found === undefined ? now.exploredBounds : unionBounds(found.exploredBounds, now.exploredBounds),
      };
      if (now.best.pathCost.penalty === 0) return { path: now.best.path, exploredBounds: found.exploredBounds };
    }
  }
  if (found === undefined) throw new Error('approach: no way was found, which geometry forbids');
  return { path: found.best.path, exploredBounds: found.exploredBounds };
}

/**
 * Ways around what the best plain way meets, below its cost. First with the least radius and without straights: where
 * no such way exists, no other does. Then with the straights that the horse wants.
 */
function detourCandidates(
  query: RouteQuery,
  context: RouteContext,
  { cost, pathCost: { hits, bounds } }: BestPath,
): { readonly options: PathCandidate[]; readonly exploredBounds: Bounds } {
  const choices = radii(query);
  const [widest = 0, least = 0] = [choices[0], choices.at(-1)];
  const { fromEnd, toEnd } = context;
  let exploredBounds = bounds;
  const detour = (each: EndStraights, radius: Metres): PathCandidate[] => {
    const base = each.cost + PENALTY.radius * (widest - radius);
    const found = shortestRoute({
      begin: each.begin,
      finish: each.finish,
      radius,
      avoid: hits,
      most: cost - base,
      pathCost: (path, ends) =>
        pathCost(withStraights(each, path, ends), {
          ...context,
          fromEnd: ends.first ? fromEnd : undefined,
          toEnd: ends.last ? toEnd : undefined,
        }),
    });
    if (found.exploredBounds !== undefined) exploredBounds = unionBounds(exploredBounds, found.exploredBounds);
    if (found.route === undefined) return [];
    const { length, path } = found.route;
    return [{ cost: length + base + circling(totalTurn(path)), straights: each, middle: path }];
  };
  const all = straightChoices(query, [1, 0]);
  const [straight, bare] = [all[0], all.at(-1)];
  if (straight === undefined || bare === undefined) return { options: [], exploredBounds };
  const options = detour(bare, least);
  if (options.length > 0) options.push(...detour(straight, widest), ...detour(straight, least));
  return { options, exploredBounds };
}

function isClear({ pathCost: { hits, leavesArena } }: BestPath): boolean {
  return hits.length === 0 && !leavesArena;
}

/**
 * The way from one pose to another at a gait. Candidates are all Dubins words at the gait's preferred radius, its least
 * radius and one between, with and without straights at the ends; when they all meet something, the shortest way around
 * it (A*). Collision-free ways come first; when there is none, the least bad one is returned, marked as blocked.
 */
export function approach(query: RouteQuery, context: RouteContext): Approach {
  if (query.bends.length > 0) return throughBends(query, context);
  const plain = bestPath(pathCandidates(query, SHARES), context);
  if (isClear(plain.best)) return { path: plain.best.path, exploredBounds: plain.exploredBounds };
  const detours = detourCandidates(query, context, plain.best);
  const { best, exploredBounds } = bestPath(detours.options, context, plain.best);
  const all = unionBounds(plain.exploredBounds, unionBounds(detours.exploredBounds, exploredBounds));
  const result = { path: best.path, exploredBounds: all };
  return isClear(best) ? result : { ...result, blocked: { piece: best.pathCost.piece } };
}
