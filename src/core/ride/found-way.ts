/** What was found for a query, and whether it still holds after other things have moved. */
import type { Metres } from '../measure/quantity.ts';
import { isSamePose } from '../plane/pose.ts';
import { type Bounds, boundsIntersect } from '../plane/ring.ts';
import type { Barrier } from './barrier.ts';
import type { RouteContext } from './collision-cost.ts';
import type { RouteQuery } from './plain-paths.ts';

/** More than every clearance of the search, metres: a change further away cannot change an approach. */
const WATCH_MARGIN: Metres = 0.6;

/** What was found, what was asked, and the box of all that was looked at for it. */
export interface FoundWay<T extends { readonly exploredBounds: Bounds }> {
  readonly query: RouteQuery;
  readonly context: RouteContext;
  readonly found: T;
}

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

function hasSameBarriers(a: readonly Barrier[], b: readonly Barrier[]): boolean {
  const ends = (of: readonly Barrier[]) => of.flatMap(({ wall }) => wall.flatMap(({ x, y }) => [x, y]));
  const [before, now] = [ends(a), ends(b)];
  return before.length === now.length && before.every((each, i) => each === now[i]);
}

/** Whether no obstacle that came, went or changed lies within the bounds that the search explored. */
function isUnaffected(
  { context: before, found: { exploredBounds } }: FoundWay<{ readonly exploredBounds: Bounds }>,
  now: RouteContext,
): boolean {
  if (before.arena !== now.arena || before.horse !== now.horse) return false;
  if (before.fromEnd?.piece !== now.fromEnd?.piece || before.toEnd?.piece !== now.toEnd?.piece) return false;
  if (!hasSameBarriers(before.barriers ?? [], now.barriers ?? [])) return false;
  if (before.obstacles === now.obstacles) return true;
  const old = new Set(before.obstacles);
  const present = new Set(now.obstacles);
  const changed = [
    ...before.obstacles.filter((each) => !present.has(each)),
    ...now.obstacles.filter((each) => !old.has(each)),
  ];
  return !changed.some(({ bounds }) => boundsIntersect(bounds, exploredBounds, WATCH_MARGIN));
}

/** Whether what was found holds for the query as things lie now. */
export function stillHolds(
  cached: FoundWay<{ readonly exploredBounds: Bounds }>,
  query: RouteQuery,
  context: RouteContext,
): boolean {
  return isSameQuery(cached.query, query) && isUnaffected(cached, context);
}
