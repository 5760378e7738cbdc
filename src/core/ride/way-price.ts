/** What a way and a passage cost a ride, in seconds, so that one choice of ways can be weighed against another. */
import type { PlacedObstacle } from '../course/placed.ts';
import { type Horse, speed } from '../horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Metres, Seconds } from '../measure/quantity.ts';
import { shortestDubinsLength } from '../plane/dubins.ts';
import { type Path, pathLength, totalTurn } from '../plane/path.ts';
import { distance } from '../plane/point.ts';
import { circling, PENALTY } from './approach.ts';
import type { TurnedApproach } from './cached-ways.ts';
import { pathCost } from './collision-cost.ts';
import { MISSING_PENALTY } from './end-straights.ts';
import type { PassageLine } from './passage-line.ts';
import { routeContext, type WayQuery, type WaySurroundings } from './way-between.ts';

/** Metres of the path until it first bends. */
function straightLength(path: Path): Metres {
  let along = 0;
  for (const { length, curvature } of path) {
    if (curvature !== 0) return along;
    along += length;
  }
  return along;
}

/** The penalty for the straights that the horse wants at the ends of a way and does not have, metres of way. */
function straightsPenalty(path: Path, { from, to }: WayQuery, horse: Horse): Metres {
  const unit = horse.bodyLength.value;
  const missing = (isWanted: boolean, of: Path) => (isWanted ? Math.max(0, unit - straightLength(of)) : 0);
  return MISSING_PENALTY * (missing(from.straightAfter, path) + missing(to.straightBefore, path.toReversed()));
}

/** The penalty for turning more tightly than the horse likes to in the gait, metres of way. */
function radiusPenalty(path: Path, { gait }: WayQuery, horse: Horse): Metres {
  const sharpest = Math.max(...path.map(({ curvature }) => Math.abs(curvature)));
  return PENALTY.radius * Math.max(0, preferredTurnRadius(horse, gait) - 1 / sharpest);
}

/**
 * What a way costs: the seconds that it takes at its gait, a turn on the spot included, and the penalties by which the
 * router chooses ways, ridden as metres at that gait.
 */
export function wayPrice({ by, approach }: TurnedApproach, way: WayQuery, around: WaySurroundings): Seconds {
  const { path } = approach;
  const { horse } = around;
  const penalty =
    circling(totalTurn(path)) +
    radiusPenalty(path, way, horse) +
    straightsPenalty(path, way, horse) +
    pathCost(path, routeContext(way, around)).penalty;
  return (Math.abs(by) / (2 * Math.PI)) * horse.turn.value + (pathLength(path) + penalty) / speed(horse, way.gait);
}

/**
 * A lower bound of what a way costs: the shortest path of the least radius, as if the arena were empty. A horse that has
 * backed out may turn on the spot first, so that only the distance is left.
 */
export function leastWayPrice({ from, to, gait }: WayQuery, { horse }: WaySurroundings): Seconds {
  const least = from.backedOut
    ? distance(from.at, to.at)
    : shortestDubinsLength(from.at, to.at, Math.min(preferredTurnRadius(horse, gait), minTurnRadius(horse, gait)));
  return least / speed(horse, gait);
}

/**
 * What the line over an obstacle costs in itself: the seconds that the horse moves on it, and the penalties where it meets
 * other obstacles or leaves the arena. Its transitions and halts depend on what comes before and after.
 */
export function passagePrice(obstacle: PlacedObstacle, line: PassageLine, around: WaySurroundings): Seconds {
  const obstacles = around.obstacles.filter((each) => each !== obstacle);
  const context = { ...around, obstacles, fromEnd: undefined, toEnd: undefined };
  return line.elements.reduce((sum, { path, moving, gait }) => {
    const { penalty } = path.length === 0 ? { penalty: 0 } : pathCost(path, context);
    return sum + moving + penalty / speed(around.horse, gait);
  }, 0);
}
