/**
 * A* from place to place, each leg a shortest path that turns no tighter than it may, with the free shortest path as what
 * is at least left to go.
 */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Reach, reaches, reachPath } from '../plane/dubins.ts';
import type { Path } from '../plane/path.ts';
import type { Pose } from '../plane/pose.ts';
import { type Bounds, joinedBounds } from '../plane/ring.ts';
import type { Place } from './candidate-poses.ts';
import type { Trouble } from './collision-cost.ts';
import { queue } from './priority-queue.ts';

/** No more legs than this are looked at closely; a place that needs more is too tangled for a horse. */
const MOST_LOOKED = 1500;
/** A way this short is a place, metres. */
const STUB: Metres = 0.01;

export interface RouteAsk {
  readonly begin: Pose;
  readonly finish: Pose;
  readonly radius: Metres;
  /** What the way has to go round, as far as is known; more is added as legs meet it. */
  readonly round: readonly PlacedObstacle[];
  /** Metres that the way may cost; dearer ones are not wanted. */
  readonly most: Metres;
  /** What a leg of the way meets; `first` and `last` when it begins or ends the way. */
  trouble(path: Path, ends: Ends): Trouble;
}

interface Ends {
  readonly first: boolean;
  readonly last: boolean;
}

export interface Reached {
  readonly place: Place;
  readonly cost: Metres;
  readonly length: Metres;
  readonly path: Path;
  readonly before?: Reached;
}

/** What waits to be looked at: a leg that was not measured yet, its next way, or a place that was reached by one. */
type Waiting =
  | { readonly kind: 'leg'; readonly from: Reached; readonly to: Place }
  | { readonly kind: 'ways'; readonly from: Reached; readonly to: Place; readonly ways: readonly Reach[] }
  | { readonly kind: 'reached'; readonly reached: Reached };

/** One search: its two ends, what legs cost, and what was met on the way. */
export interface Search {
  readonly ask: RouteAsk;
  readonly start: Place;
  readonly goal: Place;
  readonly met: Set<PlacedObstacle>;
  looked: Bounds | undefined;
  count: number;
}

/** What a path costs beside its length; undefined when it meets something or leaves the arena. */
export function price(search: Search, path: Path, [from, to]: readonly [Place, Place]): Metres | undefined {
  search.count += 1;
  const ends = { first: from === search.start, last: to === search.goal };
  const { cost, meets, bounds, outside } = search.ask.trouble(path, ends);
  search.looked = search.looked === undefined ? bounds : joinedBounds(search.looked, bounds);
  for (const obstacle of meets) search.met.add(obstacle);
  return meets.length > 0 || outside ? undefined : cost;
}

/** Whether a horse can be there at all. */
export function isUsable({ ask }: Search, { pose }: Place): boolean {
  const { meets, outside } = ask.trouble([{ start: pose, length: STUB, curvature: 0 }], { first: false, last: false });
  return meets.length === 0 && !outside;
}

export function waysBetween(from: Pose, to: Pose, radius: Metres): Reach[] {
  return reaches(from, to, radius).sort((a, b) => a.length - b.length);
}

/** A leg's cheapest way that is left, ridden: reached at what it costs. */
function ridden(search: Search, from: Reached, to: Place, way: Reach): Reached | undefined {
  const path = reachPath(from.place.pose, way, search.ask.radius);
  const dear = price(search, path, [from.place, to]);
  if (dear === undefined) return undefined;
  return { place: to, cost: from.cost + way.length + dear, length: from.length + way.length, path, before: from };
}

/** The cheapest way through the places that are offered. What may turn out cheapest is looked at first, and no sooner. */
export function cheapest(search: Search, places: readonly Place[]): Reached | undefined {
  const { ask, start, goal } = search;
  const waiting = queue<Waiting>();
  const settled = new Set<Place>();
  const offer = (cost: Metres, item: Waiting): void => {
    if (cost < ask.most) waiting.add(cost, item);
  };
  const offerWays = (from: Reached, to: Place, ways: readonly Reach[]): void => {
    const [shortest] = ways;
    if (shortest !== undefined) offer(from.cost + shortest.length + to.left, { kind: 'ways', from, to, ways });
  };
  const settle = (from: Reached): void => {
    settled.add(from.place);
    const { x, y } = from.place.pose;
    for (const to of places) {
      // No way is shorter than the straight one.
      const straight = Math.hypot(to.pose.x - x, to.pose.y - y);
      if (!settled.has(to)) offer(from.cost + straight + to.left, { kind: 'leg', from, to });
    }
    offerWays(from, goal, waysBetween(from.place.pose, goal.pose, ask.radius));
  };
  settle({ place: start, cost: 0, length: 0, path: [] });
  for (let next = waiting.next(); next !== undefined && search.count <= MOST_LOOKED; next = waiting.next()) {
    const { item } = next;
    const to = item.kind === 'reached' ? item.reached.place : item.to;
    if (settled.has(to)) continue;
    if (item.kind === 'reached') {
      if (to === goal) return item.reached;
      settle(item.reached);
    } else if (item.kind === 'leg') {
      offerWays(item.from, to, waysBetween(item.from.place.pose, to.pose, ask.radius));
    } else {
      const [way, ...others] = item.ways;
      offerWays(item.from, to, others);
      const reached = way === undefined ? undefined : ridden(search, item.from, to, way);
      if (reached !== undefined) offer(reached.cost + to.left, { kind: 'reached', reached });
    }
  }
  return undefined;
}
