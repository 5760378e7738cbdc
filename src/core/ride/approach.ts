import type { PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { dubinsThroughWaypoints } from '../plane/dubins-waypoints.ts';
import { type Path, totalTurn } from '../plane/path.ts';
import { type Bounds, unionBounds } from '../plane/ring.ts';
import { type PathCost, pathCost, type RouteContext } from './collision-cost.ts';
import type { Detour } from './detour.ts';
import {
  approachPath,
  circling,
  endChoices,
  leastCost,
  type PathCandidate,
  PENALTY,
  pathCandidates,
  type RouteQuery,
  radii,
} from './plain-paths.ts';
import { laidAnew, type Route, shortestRoute } from './route.ts';
import type { DetourQuery, EdgeEnds } from './search.ts';

/** Why no way is clear: the piece that the least bad way meets, or none where it leaves the arena. */
export interface Blockage {
  readonly piece: PlacedPiece | undefined;
}

/** A way, and the box of all that the search looked at: a change outside the box cannot change the result. */
export interface Approach {
  readonly path: Path;
  readonly exploredBounds: Bounds;
  /** Its price in metres of way, and by how much it is above that of the cheapest way if nothing lay about. */
  readonly cost: Metres;
  readonly excess: Metres;
  /** What it goes around; absent for a plain way. */
  readonly detour?: Detour;
  /** Absent for a clear way, and for one with bends that the designer has placed. */
  readonly blocked?: Blockage;
}

/** How many horse's lengths are kept straight at an end: one is wanted. */
const SHARES = [1, 0.5, 0];
const DETOUR_SHARES = [1, 0];
/**
 * How many paths of a detour are held against the obstacles: until a way is found or disproved; for one more side that a
 * way could take; during a drag, where a frame must not wait; and where a way is known and only a better one is sought.
 */
const BUDGETS = { full: [60, 150, 150, 400, 400, 1200, 2400], brief: [150, 150], side: [300, 300], refinement: [200] };
export type SearchEffort = 'full' | 'side' | 'brief';

/** How hard a way is sought, and what a detour may cost at the most, metres of way. */
interface ApproachOptions {
  readonly effort?: SearchEffort;
  readonly most?: Metres;
}

/** A saving below both of these is not sought, metres of way and a share of it: a rider would not see it. */
const WORTHWHILE: Metres = 1;
const WORTHWHILE_SHARE = 0.05;

interface BestPath {
  /** With the surcharge. */
  readonly cost: Metres;
  readonly surcharge: Metres;
  readonly path: Path;
  readonly pathCost: PathCost;
  readonly detour: Detour | undefined;
}

/** What a path costs beside its price, metres of way, for a caller who would rather not have it. */
type Surcharge = (path: Path) => Metres;

/**
 * The best of the candidates and an incumbent: a candidate is checked for collisions only while its lower bound is
 * below the best cost.
 */
function bestPath(
  options: PathCandidate[],
  context: RouteContext,
  { already, surcharge }: { already?: BestPath | undefined; surcharge?: Surcharge | undefined } = {},
): { best: BestPath; exploredBounds: Bounds } {
  let best = already;
  let exploredBounds = already?.pathCost.bounds;
  const sorted = options.sort((a, b) => a.cost - b.cost);
  for (const candidate of sorted) {
    if (best !== undefined && candidate.cost >= best.cost) break;
    const path = approachPath(candidate);
    const found = pathCost(path, context);
    exploredBounds = exploredBounds === undefined ? found.bounds : unionBounds(exploredBounds, found.bounds);
    const more = surcharge?.(path) ?? 0;
    const cost = candidate.cost + found.penalty + more;
    if (best !== undefined && cost >= best.cost) continue;
    best = { cost, surcharge: more, path, pathCost: found, detour: candidate.detour };
  }
  if (best === undefined || exploredBounds === undefined)
    throw new Error('approach: no way was found, which geometry forbids');
  return { best, exploredBounds };
}

function approachOf({ best, exploredBounds }: { best: BestPath; exploredBounds: Bounds }, bound: Metres): Approach {
  const { path, pathCost, detour } = best;
  const cost = best.cost - best.surcharge;
  const isClear = pathCost.hits.length === 0 && !pathCost.leavesArena;
  return {
    ...{ path, exploredBounds, cost, excess: cost - bound },
    ...(detour === undefined ? {} : { detour }),
    ...(isClear ? {} : { blocked: { piece: pathCost.piece } }),
  };
}

/**
 * With bends the designer has chosen the way. This search is expensive, so the first collision-free result is taken.
 */
function throughBends(query: RouteQuery, context: RouteContext): Approach {
  let found: { best: BestPath; exploredBounds: Bounds } | undefined;
  const { begins, finishes } = endChoices(query, [1, 0]);
  const choices = radii(query);
  for (const i of new Set([0, Math.max(begins.length, finishes.length) - 1])) {
    const [opening, closing] = [begins[i] ?? begins[0], finishes[i] ?? finishes[0]];
    for (const radius of new Set([choices[0], choices.at(-1)])) {
      if (opening === undefined || closing === undefined || radius === undefined) continue;
      const { length, path } = dubinsThroughWaypoints(opening.pose, query.bends, closing.pose, radius);
      const whole = [...opening.straight, ...path, ...closing.straight];
      const candidate = { cost: length + opening.cost + closing.cost + circling(totalTurn(path)), path: whole };
      const { best, exploredBounds } = bestPath([candidate], context, { already: found?.best });
      const before = found?.exploredBounds;
      found = { best, exploredBounds: before === undefined ? exploredBounds : unionBounds(before, exploredBounds) };
      if (best.pathCost.penalty === 0) break;
    }
    if (found?.best.pathCost.penalty === 0) break;
  }
  if (found === undefined) throw new Error('approach: no way was found, which geometry forbids');
  const { best, exploredBounds } = found;
  return { path: best.path, cost: best.cost, excess: 0, exploredBounds };
}

function detourQuery(
  query: RouteQuery,
  context: RouteContext,
  of: Pick<DetourQuery, 'radius' | 'avoid' | 'most' | 'budgets'>,
): DetourQuery {
  // One for each part of a way, made beforehand: a search asks them hundreds of times.
  const atBoth = context;
  const atFirst = { ...context, toEnd: undefined };
  const atLast = { ...context, fromEnd: undefined };
  const between = { ...atFirst, fromEnd: undefined };
  const around = ({ first, last }: EdgeEnds): RouteContext => {
    if (first) return last ? atBoth : atFirst;
    return last ? atLast : between;
  };
  return {
    ...of,
    ...endChoices(query, DETOUR_SHARES),
    pathCost: (path, ends, among) => pathCost(path, around(ends), among),
  };
}

function detourCandidate({ length, path, detour }: Route, query: RouteQuery): PathCandidate {
  const [widest = 0] = radii(query);
  const cost = length + PENALTY.radius * (widest - detour.radius) + circling(totalTurn(path));
  return { cost, path, detour };
}

/**
 * The best way around what plain ways meet, if it is cheaper than the best of these. The first search turns on the least
 * radius: a way on a wider one is one of its ways too, so its length bounds the other from below.
 */
function bestDetour(
  query: RouteQuery,
  context: RouteContext,
  plain: BestPath,
  { budgets, limit }: { readonly budgets: readonly number[]; readonly limit: Metres },
): { best: BestPath; exploredBounds: Bounds } {
  const { hits, bounds } = plain.pathCost;
  let [best, exploredBounds] = [plain, bounds];
  const choices = radii(query);
  const [widest = 0, least = 0] = [choices[0], choices.at(-1)];
  const detour = (radius: Metres, budgets: readonly number[]): Metres | undefined => {
    const most = Math.min(limit, best.cost) - PENALTY.radius * (widest - radius);
    const found = shortestRoute(detourQuery(query, context, { radius, avoid: hits, most, budgets }));
    if (found.exploredBounds !== undefined) exploredBounds = unionBounds(exploredBounds, found.exploredBounds);
    if (found.route === undefined) return undefined;
    const now = bestPath([detourCandidate(found.route, query)], context, { already: best });
    best = now.best;
    exploredBounds = unionBounds(exploredBounds, now.exploredBounds);
    return found.route.length;
  };
  const bound = detour(least, budgets);
  const worthwhile = best.cost - Math.max(WORTHWHILE, WORTHWHILE_SHARE * best.cost);
  if (bound !== undefined && widest > least && bound < worthwhile) detour(widest, BUDGETS.refinement);
  return { best, exploredBounds };
}

/** The best way without a detour. It takes a small part of the time of `approach`. */
export function plainWay(query: RouteQuery, context: RouteContext, surcharge?: Surcharge): Approach {
  const candidates = pathCandidates(query, SHARES);
  const bound = leastCost(candidates);
  return approachOf(bestPath(candidates, context, { surcharge }), bound);
}

/** A way around the same corners as a detour, where they are now; undefined when it is not clear so. */
export function sameDetour(query: RouteQuery, context: RouteContext, detour: Detour): Approach | undefined {
  const { radius } = detour;
  const asked = detourQuery(query, context, { radius, avoid: [], most: Number.POSITIVE_INFINITY, budgets: [] });
  const route = laidAnew(asked, detour, context.obstacles);
  if (route === undefined) return undefined;
  const bound = leastCost(pathCandidates(query, SHARES));
  const found = approachOf(bestPath([detourCandidate(route, query)], context), bound);
  return found.blocked === undefined ? found : undefined;
}

/**
 * The way from one pose to another at a gait. Candidates are all Dubins words at the gait's preferred radius, its least
 * radius and one between, with and without straights at the ends. When the cheapest of them meets something, the
 * cheapest way around it is sought too (A*). Collision-free ways come first; when there is none, the least bad one is
 * returned, marked as blocked.
 */
export function approach(
  query: RouteQuery,
  context: RouteContext,
  { effort = 'full', most = Number.POSITIVE_INFINITY }: ApproachOptions = {},
): Approach {
  if (query.bends.length > 0) return throughBends(query, context);
  const candidates = pathCandidates(query, SHARES);
  const bound = leastCost(candidates);
  const plain = bestPath(candidates, context);
  const found = approachOf(plain, bound);
  const isEnough = found.excess <= Math.max(WORTHWHILE, WORTHWHILE_SHARE * bound);
  if (found.blocked === undefined && isEnough) return found;
  const { best, exploredBounds } = bestDetour(query, context, plain.best, { budgets: BUDGETS[effort], limit: most });
  return approachOf({ best, exploredBounds: unionBounds(plain.exploredBounds, exploredBounds) }, bound);
}
