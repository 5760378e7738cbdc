/** The approaches and passage lines of the last survey, reused while nothing that they depend on has changed. */

import type { Leg } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { type Approach, approach, plainWay } from './approach.ts';
import type { RouteContext } from './collision-cost.ts';
import { type FoundWay, isSameSearch } from './found-way.ts';
import { type PassageLine, passageLine } from './passage-line.ts';
import type { RouteQuery } from './plain-paths.ts';
import { noTestedPaths, type TestedPaths } from './tested-paths.ts';

/** What was found, with the paths that were tested for it. */
interface CachedWay<T> extends FoundWay<T> {
  readonly tested: TestedPaths;
}

const approachCache = new WeakMap<object, CachedWay<Approach>>();

/** What `find` says of the query, found again only when something that it depends on has changed. */
function cachedWay<T>(
  cache: WeakMap<object, CachedWay<T>>,
  owner: object,
  {
    query,
    context,
    find,
  }: { query: RouteQuery; context: RouteContext; find(query: RouteQuery, context: RouteContext): T },
): T {
  const cached = cache.get(owner);
  if (cached !== undefined && isSameSearch(cached, query, context)) {
    cache.set(owner, { ...cached, context });
    return cached.found;
  }
  const tested = noTestedPaths();
  const found = find(query, { ...context, tested });
  cache.set(owner, { query, context, found, tested });
  return found;
}

/** The approach of a leg or to the end, cached under `owner`. */
export function cachedApproach(owner: object, query: RouteQuery, context: RouteContext): Approach {
  return cachedWay(approachCache, owner, { query, context, find: approach });
}

/** The turns on the spot that are tried after backing out. */
const TURNS: readonly Radians[] = [1, 2, 3, 4].flatMap((n) => [(n * Math.PI) / 4, (-n * Math.PI) / 4]);
/** The price of a turn, metres of way a radian: about the time that it takes at a walk. Estimate. */
const TURN_PRICE: Metres = 1.5;

/** A way that begins with a turn on the spot, to the left where `by` is above 0; without one where it is 0. */
export interface TurnedApproach {
  readonly by: Radians;
  readonly approach: Approach;
}

/** The query as it is after a turn. */
export function turnedQuery(query: RouteQuery, by: Radians): RouteQuery {
  return by === 0 ? query : { ...query, from: { ...query.from, angle: query.from.angle + by } };
}

/** The turn by which it leaves the cheapest way, and that way; undefined when no turn leaves a plain one. */
interface TurnChoice {
  readonly best: TurnedApproach | undefined;
}

function bestTurn(query: RouteQuery, context: RouteContext): TurnChoice {
  if (plainWay(query, context).blocked === undefined) return { best: undefined };
  let [best, least]: [TurnedApproach | undefined, Metres] = [undefined, Number.POSITIVE_INFINITY];
  for (const by of TURNS) {
    const way = plainWay(turnedQuery(query, by), context);
    const cost = way.cost + TURN_PRICE * Math.abs(by);
    if (way.blocked !== undefined || cost >= least) continue;
    [best, least] = [{ by, approach: way }, cost];
  }
  return { best };
}

const turnCache = new WeakMap<object, CachedWay<TurnChoice>>();

/**
 * The way of a horse that has backed out and faces what it backed out of: straight on where a plain way is clear; else
 * with the turn on the spot from which a plain way is cheapest; else around what is in the way.
 */
export function turnedApproach(owner: object, query: RouteQuery, context: RouteContext): TurnedApproach {
  const chosen = query.bends.length > 0 ? undefined : cachedWay(turnCache, owner, { query, context, find: bestTurn });
  return chosen?.best ?? { by: 0, approach: cachedApproach(owner, query, context) };
}

interface CachedPassage {
  readonly passage: string;
  readonly gait: Gait;
  readonly horse: Horse;
  readonly line: PassageLine | undefined;
}
const passageCache = new WeakMap<PlacedObstacle, CachedPassage[]>();

/** The line over an obstacle, cached while the obstacle is the same object; undefined when it has no such passage. */
export function cachedPassage(obstacle: PlacedObstacle, leg: Leg, horse: Horse): PassageLine | undefined {
  const cached = passageCache.get(obstacle) ?? [];
  const same = cached.find((each) => each.passage === leg.passage && each.gait === leg.gait && each.horse === horse);
  if (same !== undefined) return same.line;
  const passage = obstacle.obstacle.passages.find(({ id }) => id === leg.passage);
  const line = passage === undefined ? undefined : passageLine(obstacle, { passage, gait: leg.gait, horse });
  passageCache.set(obstacle, [...cached, { passage: leg.passage, gait: leg.gait, horse, line }]);
  return line;
}
