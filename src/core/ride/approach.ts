import type { PlacedPiece } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Metres } from '../measure/quantity.ts';
import { candidatePath, type DubinsCandidate, dubinsCandidates } from '../plane/dubins.ts';
import { dubinsThroughWaypoints } from '../plane/dubins-waypoints.ts';
import { type Path, pathLength, totalTurn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import { type PathCost, pathCost, type RouteContext } from './collision-cost.ts';
import { type EndStraights, endStraightChoices, withStraights } from './end-straights.ts';
import { type Route, shortestRoute } from './route.ts';

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
export const PENALTY = { radius: 1.5, circling: 3 };
/** A way turns this much before it counts as circling. */
const CIRCLING_TURN = 1.25 * Math.PI;
/** How many horse's lengths are kept straight at an end: one is wanted. */
const SHARES = [1, 0.5, 0];
/** A saving below both of these is not sought, metres of way and a share of it: a rider would not see it. */
const WORTHWHILE: Metres = 1;
const WORTHWHILE_SHARE = 0.05;

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

/** The penalty of a way that turns so far in all, radians: only what is beyond a usual turn counts. */
export function circling(turn: number): Metres {
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
  const sorted = options.sort((a, b) => a.cost - b.cost);
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

/** How straight and how wide a way is asked to be, and what it costs beside its length in metres of way. */
interface Manner {
  readonly straights: EndStraights;
  readonly radius: Metres;
  readonly base: Metres;
  /** Of the base, what is no length: the penalties. */
  readonly penalty: Metres;
}

/** The manners of a detour, the least asking one first, the others by their penalty. */
function manners(query: RouteQuery): Manner[] {
  const choices = radii(query);
  const [widest = 0, least = 0] = [choices[0], choices.at(-1)];
  const all = straightChoices(query, [1, 0]).flatMap((straights) =>
    [...new Set([widest, least])].map((radius): Manner => {
      const base = straights.cost + PENALTY.radius * (widest - radius);
      return { straights, radius, base, penalty: base - pathLength(straights.opening) - pathLength(straights.closing) };
    }),
  );
  const sorted = all.sort((x, y) => x.penalty - y.penalty);
  return [...sorted.slice(-1), ...sorted.slice(0, -1)];
}

/**
 * The best way around what plain ways meet, if it is cheaper than the best of these. The first search takes the least
 * radius and no straights: every other way is one of its ways too, so its length bounds them all from below.
 */
function bestDetour(
  query: RouteQuery,
  context: RouteContext,
  plain: BestPath,
): { best: BestPath; exploredBounds: Bounds } {
  const { fromEnd, toEnd } = context;
  const { hits, bounds } = plain.pathCost;
  let [best, exploredBounds] = [plain, bounds];
  const detour = ({ straights, radius }: Manner, most: Metres, isRefinement: boolean) => {
    const found = shortestRoute({
      begin: straights.begin,
      finish: straights.finish,
      radius,
      avoid: hits,
      most,
      isRefinement,
      pathCost: (path, ends) =>
        pathCost(withStraights(straights, path, ends), {
          ...context,
          fromEnd: ends.first ? fromEnd : undefined,
          toEnd: ends.last ? toEnd : undefined,
        }),
    });
    if (found.exploredBounds !== undefined) exploredBounds = unionBounds(exploredBounds, found.exploredBounds);
    return found.route;
  };
  const take = ({ straights, base }: Manner, { length, path }: Route): void => {
    const candidate = { cost: length + base + circling(totalTurn(path)), straights, middle: path };
    const now = bestPath([candidate], context, best);
    best = now.best;
    exploredBounds = unionBounds(exploredBounds, now.exploredBounds);
  };
  const [least, ...others] = manners(query);
  const shortest = least === undefined ? undefined : detour(least, plain.cost, false);
  if (least === undefined || shortest === undefined) return { best, exploredBounds };
  take(least, shortest);
  for (const manner of others) {
    // The others are sorted by their penalty.
    if (shortest.length + manner.penalty >= best.cost - Math.max(WORTHWHILE, WORTHWHILE_SHARE * best.cost)) break;
    const route = detour(manner, best.cost - manner.base, true);
    if (route !== undefined) take(manner, route);
  }
  return { best, exploredBounds };
}

function isClear({ pathCost: { hits, leavesArena } }: BestPath): boolean {
  return hits.length === 0 && !leavesArena;
}

/** The cheapest plain way, whether it meets nothing, and its price in metres of way. */
export interface PlainWay extends Approach {
  readonly isClear: boolean;
  readonly cost: Metres;
}

/** The best way without a detour. It takes a small part of the time of `approach`. */
export function plainWay(query: RouteQuery, context: RouteContext): PlainWay {
  const { best, exploredBounds } = bestPath(pathCandidates(query, SHARES), context);
  return { path: best.path, cost: best.cost, isClear: isClear(best), exploredBounds };
}

/**
 * The way from one pose to another at a gait. Candidates are all Dubins words at the gait's preferred radius, its least
 * radius and one between, with and without straights at the ends. When the cheapest of them meets something, the
 * cheapest way around it is sought too (A*). Collision-free ways come first; when there is none, the least bad one is
 * returned, marked as blocked.
 */
export function approach(query: RouteQuery, context: RouteContext): Approach {
  if (query.bends.length > 0) return throughBends(query, context);
  const candidates = pathCandidates(query, SHARES);
  const bound = Math.min(...candidates.map(({ cost }) => cost));
  const plain = bestPath(candidates, context);
  const { path, cost } = plain.best;
  const isEnough = cost <= bound + Math.max(WORTHWHILE, WORTHWHILE_SHARE * bound);
  if (isClear(plain.best) && isEnough) return { path, exploredBounds: plain.exploredBounds };
  const { best, exploredBounds } = bestDetour(query, context, plain.best);
  const result = { path: best.path, exploredBounds: unionBounds(plain.exploredBounds, exploredBounds) };
  return isClear(best) ? result : { ...result, blocked: { piece: best.pathCost.piece } };
}
