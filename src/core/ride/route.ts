/** The shortest way round things: from corner to corner of what is in the way. */
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { reachPath } from '../plane/dubins.ts';
import type { Path } from '../plane/path.ts';
import type { Bounds } from '../plane/ring.ts';
import { fixedPlace, nearPlaces, type Place, touches } from './candidate-poses.ts';
import { cornersOf } from './corner-arcs.ts';
import { cheapest, isUsable, price, type Reached, type RouteAsk, type Search, waysBetween } from './search.ts';

/** How often the places of the best way are moved a little, and by how much at first. */
const ROUNDS = 6;
const FIRST_MOVE = 0.25;

interface Route {
  /** Metres, and what it costs beside them. */
  readonly length: Metres;
  readonly cost: Metres;
  readonly path: Path;
}

/** What was found, and the box of all that was looked at. */
export interface Routed {
  readonly route: Route | undefined;
  readonly looked: Bounds | undefined;
}

function chain(last: Reached | undefined): Reached[] {
  const found: Reached[] = [];
  for (let at = last; at?.before !== undefined; at = at.before) found.unshift(at);
  return found;
}

/** The shortest way from place to place that meets nothing. */
function joined(search: Search, places: readonly Place[]): Route | undefined {
  let [length, cost] = [0, 0];
  const path: Path[number][] = [];
  for (const [i, to] of places.slice(1).entries()) {
    const from = places[i] ?? search.start;
    let found = false;
    for (const way of waysBetween(from.pose, to.pose, search.ask.radius)) {
      const leg = reachPath(from.pose, way, search.ask.radius);
      const dear = price(search, leg, [from, to]);
      if (dear === undefined) continue;
      length += way.length;
      cost += way.length + dear;
      path.push(...leg);
      found = true;
      break;
    }
    if (!found) return undefined;
  }
  return { length, cost, path };
}

/** The way with each of its places moved to where the whole is cheapest. */
function eased(search: Search, last: Reached): Route | undefined {
  let places: readonly Place[] = [search.start, ...chain(last).map(({ place }) => place)];
  let best = joined(search, places);
  let move = FIRST_MOVE;
  for (let round = 0; round < ROUNDS && places.length > 2; round += 1) {
    for (const i of places.keys()) {
      for (const place of places[i]?.moved(move) ?? []) {
        const tried = places.with(i, place);
        const now = joined(search, tried);
        if (now === undefined || best === undefined || now.cost >= best.cost) continue;
        best = now;
        places = tried;
      }
    }
    move /= 2;
  }
  return best;
}

/**
 * The shortest way at a radius that goes clear round everything; no route when there is none below the cost asked for.
 * What legs meet is gone round too, until nothing new is met.
 */
export function routed(ask: RouteAsk): Routed {
  const round = new Set(ask.round);
  const start = fixedPlace(ask.begin, ask);
  const goal = { ...fixedPlace(ask.finish, ask), left: 0 };
  const search: Search = { ask, start, goal, met: new Set(), looked: undefined, count: 0 };
  const usable = (all: readonly Place[]): Place[] => all.filter((place) => isUsable(search, place));
  const near = usable(nearPlaces(ask.begin, ask));
  const corners = new Map<PlacedObstacle, readonly Place[]>();
  for (;;) {
    for (const obstacle of round) {
      if (corners.has(obstacle)) continue;
      const all = cornersOf(obstacle).flatMap((corner) => touches(corner, ask));
      corners.set(obstacle, usable(all));
    }
    search.count = 0;
    const last = cheapest(search, [...corners.values(), near].flat());
    const fresh = [...search.met].filter((obstacle) => !round.has(obstacle));
    for (const obstacle of fresh) round.add(obstacle);
    if (fresh.length > 0) continue;
    return { route: last === undefined ? undefined : eased(search, last), looked: search.looked };
  }
}
