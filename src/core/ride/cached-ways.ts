/** The approaches and passage lines of the last survey, reused while nothing that they depend on has changed. */

import type { Leg } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { pathLength } from '../plane/path.ts';
import { isSamePose } from '../plane/pose.ts';
import { boundsIntersect } from '../plane/ring.ts';
import { type Approach, approach, type RouteQuery } from './approach.ts';
import type { RouteContext } from './collision-cost.ts';
import { type PassageLine, passageLine } from './passage-line.ts';

/** More than every clearance of the search, metres: a change further away cannot change an approach. */
const WATCH_MARGIN: Metres = 0.6;

interface CachedApproach {
  readonly query: RouteQuery;
  readonly context: RouteContext;
  readonly approach: Approach;
}
const approachCache = new WeakMap<object, CachedApproach>();

function isSameQuery(a: RouteQuery, b: RouteQuery): boolean {
  return (
    isSamePose(a.from, b.from) &&
    isSamePose(a.to, b.to) &&
    a.gait === b.gait &&
    a.horse === b.horse &&
    a.bends === b.bends &&
    a.straightAfter === b.straightAfter &&
    a.straightBefore === b.straightBefore
  );
}

/** Whether no obstacle that came, went or changed lies within the bounds that the search explored. */
function isUnaffected({ context: before, approach: { exploredBounds } }: CachedApproach, now: RouteContext): boolean {
  if (before.arena !== now.arena || before.horse !== now.horse) return false;
  if (before.fromEnd?.piece !== now.fromEnd?.piece || before.toEnd?.piece !== now.toEnd?.piece) return false;
  if (before.obstacles === now.obstacles) return true;
  const old = new Set(before.obstacles);
  const present = new Set(now.obstacles);
  const changed = [
    ...before.obstacles.filter((each) => !present.has(each)),
    ...now.obstacles.filter((each) => !old.has(each)),
  ];
  return !changed.some(({ bounds }) => boundsIntersect(bounds, exploredBounds, WATCH_MARGIN));
}

/**
 * The approach of a leg or to the end, cached under `owner`; searched again only when something that it depends on has
 * changed.
 */
export function cachedApproach(owner: object, query: RouteQuery, context: RouteContext): Approach {
  const cached = approachCache.get(owner);
  if (cached !== undefined && isSameQuery(cached.query, query) && isUnaffected(cached, context)) {
    approachCache.set(owner, { ...cached, context });
    return cached.approach;
  }
  const found = approach(query, context);
  approachCache.set(owner, { query, context, approach: found });
  return found;
}

/** The turns on the spot that are tried after backing out: the smallest that leaves a clear way is taken. */
const TURNS: readonly Radians[] = [1, 2, 3, 4].map((n) => (n * Math.PI) / 4);
const turnOwners = new WeakMap<object, ReadonlyMap<Radians, object>>();

/** One owner more for each turn, so that each way has its own place in the cache. */
function turnOwner(owner: object, by: Radians): object {
  let owners = turnOwners.get(owner);
  if (owners === undefined) {
    owners = new Map(
      TURNS.flatMap((turn): [Radians, object][] => [
        [turn, {}],
        [-turn, {}],
      ]),
    );
    turnOwners.set(owner, owners);
  }
  return owners.get(by) ?? owner;
}

/** A way that begins with a turn on the spot, to the left where `by` is above 0. */
interface TurnedApproach {
  readonly by: Radians;
  readonly found: Approach;
}

/**
 * The way after a turn on the spot, for a horse that has backed out and faces what it backed out of; undefined when no
 * turn leaves a clear way.
 */
export function turnedApproach(owner: object, query: RouteQuery, context: RouteContext): TurnedApproach | undefined {
  for (const turn of TURNS) {
    const clear = [turn, -turn].flatMap((by): TurnedApproach[] => {
      const from = { ...query.from, angle: query.from.angle + by };
      const found = cachedApproach(turnOwner(owner, by), { ...query, from }, context);
      return found.blocked === undefined ? [{ by, found }] : [];
    });
    const [best] = clear.sort((a, b) => pathLength(a.found.path) - pathLength(b.found.path));
    if (best !== undefined) return best;
  }
  return undefined;
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
