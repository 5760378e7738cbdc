/** What was found for a query, and whether it still holds after other things have moved. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { isSamePose } from '../plane/pose.ts';
import { type Bounds, boundsIntersect } from '../plane/ring.ts';
import type { Barrier } from './barrier.ts';
import type { RouteContext } from './collision-cost.ts';
import type { RouteQuery } from './plain-paths.ts';
import { meetsTested, type TestedPaths } from './tested-paths.ts';

/** More than every clearance of the search, metres: a change further away cannot change an approach. */
const WATCH_MARGIN: Metres = 0.6;

/** What was found, and what was asked. */
export interface FoundWay<T> {
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
  return (
    a.length === b.length &&
    a.every(({ obstacle }, i) => obstacle === b[i]?.obstacle) &&
    before.every((each, i) => each === now[i])
  );
}

/** The obstacles that came, went or changed; undefined when something else about the ways differs as well. */
function changedObstacles(before: RouteContext, now: RouteContext): readonly PlacedObstacle[] | undefined {
  if (before.arena !== now.arena || before.horse !== now.horse) return undefined;
  if (before.fromEnd?.piece !== now.fromEnd?.piece || before.toEnd?.piece !== now.toEnd?.piece) return undefined;
  if (!hasSameBarriers(before.barriers ?? [], now.barriers ?? [])) return undefined;
  if (before.obstacles === now.obstacles) return [];
  const [old, present] = [new Set(before.obstacles), new Set(now.obstacles)];
  const stayed = now.obstacles.filter((each) => old.has(each));
  // The order of those that stayed decides between equals.
  if (before.obstacles.filter((each) => present.has(each)).some((each, i) => each !== stayed[i])) return undefined;
  return [...before.obstacles.filter((each) => !present.has(each)), ...now.obstacles.filter((each) => !old.has(each))];
}

/** Whether what was found holds for the query as things lie now: no change is anywhere that was looked at. */
export function stillHolds(
  cached: FoundWay<{ readonly exploredBounds: Bounds }>,
  query: RouteQuery,
  context: RouteContext,
): boolean {
  const changed = isSameQuery(cached.query, query) ? changedObstacles(cached.context, context) : undefined;
  const { exploredBounds } = cached.found;
  return changed?.every(({ bounds }) => !boundsIntersect(bounds, exploredBounds, WATCH_MARGIN)) ?? false;
}

/** The same, exactly: the search would test the same paths and find of each what it found before. */
export function isSameSearch(
  { tested, ...cached }: FoundWay<unknown> & { readonly tested: TestedPaths },
  query: RouteQuery,
  context: RouteContext,
): boolean {
  const changed = isSameQuery(cached.query, query) ? changedObstacles(cached.context, context) : undefined;
  return changed?.every((each) => !meetsTested(tested, each)) ?? false;
}
