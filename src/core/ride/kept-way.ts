/**
 * While something is dragged, a way keeps its side: it is laid anew on it, and another side is taken only when that is
 * better by a margin. The search for the best way runs when the kept one is no longer clear or has become too long.
 */
import type { Metres } from '../measure/quantity.ts';
import { distance } from '../plane/point.ts';
import type { Bounds } from '../plane/ring.ts';
import { type Approach, approach, plainWay, type SearchEffort, sameDetour } from './approach.ts';
import type { RouteContext } from './collision-cost.ts';
import { type FoundWay, stillHolds } from './found-way.ts';
import type { RouteQuery } from './plain-paths.ts';
import { isSameSide } from './same-side.ts';

/** Another side is taken when it saves more than both: metres of way, and a share of it. */
const MARGIN: Metres = 1.5;
const MARGIN_SHARE = 0.1;
/** Where nothing goes clear, a clear way is sought again after something has moved so far. */
const SEARCH_STEP: Metres = 0.3;

/** A way as it is shown during a drag, and as it was when the best one was last sought. */
export interface KeptWay extends FoundWay<Approach> {
  readonly searched: FoundWay<Approach>;
}

/** A way that was just sought. */
export function soughtWay(searched: FoundWay<Approach>): KeptWay {
  return { ...searched, searched };
}

function margin(cost: Metres): Metres {
  return Math.max(MARGIN, MARGIN_SHARE * cost);
}

function hasMoved(a: Bounds, b: Bounds): boolean {
  const by = [a.minX - b.minX, a.minY - b.minY, a.maxX - b.maxX, a.maxY - b.maxY];
  return by.some((each) => Math.abs(each) > SEARCH_STEP);
}

/** Whether an end of the way or an obstacle is no longer near to where it was. */
function isFarFrom({ query, context }: FoundWay<Approach>, now: RouteQuery, { obstacles }: RouteContext): boolean {
  if (distance(query.from, now.from) > SEARCH_STEP || distance(query.to, now.to) > SEARCH_STEP) return true;
  if (context.obstacles.length !== obstacles.length) return true;
  const before = new Map(context.obstacles.map((each) => [each.obstacle.id, each]));
  return obstacles.some((each) => {
    const was = before.get(each.obstacle.id);
    return was !== each && (was === undefined || hasMoved(was.bounds, each.bounds));
  });
}

/** The way on the same side as before where it now is clear; else the best plain one. */
function laidOnSameSide(before: FoundWay<Approach>, query: RouteQuery, context: RouteContext): Approach {
  const except = [context.fromEnd, context.toEnd].flatMap((end) => (end === undefined ? [] : [end.piece]));
  const { path, cost, detour } = before.found;
  const surcharge = (other: Approach['path']): Metres =>
    isSameSide(path, other, { obstacles: context.obstacles, except }) ? 0 : margin(cost);
  const plain = plainWay(query, context, surcharge);
  const around = detour === undefined ? undefined : sameDetour(query, context, detour);
  if (around === undefined || surcharge(around.path) > 0) return plain;
  return plain.blocked === undefined && plain.cost + surcharge(plain.path) <= around.cost ? plain : around;
}

/** The way during a drag, from the one that was there before. */
export function keptWay(before: KeptWay, query: RouteQuery, context: RouteContext): KeptWay {
  if (stillHolds(before, query, context)) return { ...before, context };
  const { searched } = before;
  const seek = (effort: SearchEffort): FoundWay<Approach> => ({
    query,
    context,
    found: approach(query, context, { effort }),
  });
  if (query.bends.length > 0) return soughtWay(seek('full'));
  const found = laidOnSameSide(before, query, context);
  const kept: KeptWay = { query, context, found, searched };
  if (found.blocked !== undefined) {
    if (before.found.blocked === undefined) return soughtWay(seek('full'));
    return isFarFrom(searched, query, context) ? soughtWay(seek('brief')) : kept;
  }
  if (before.found.blocked === undefined && found.excess <= searched.found.excess + margin(found.cost)) return kept;
  const best = seek('full');
  return found.cost <= best.found.cost + margin(best.found.cost) ? { ...kept, searched: best } : soughtWay(best);
}
