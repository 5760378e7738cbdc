/** What a way and a passage cost a ride, in seconds, so that one choice of ways can be weighed against another. */
import type { PlacedObstacle } from '../course/placed.ts';
import { speed } from '../horses/horse.ts';
import { minTurnRadius, preferredTurnRadius } from '../horses/turns.ts';
import type { Seconds } from '../measure/quantity.ts';
import { shortestDubinsLength } from '../plane/dubins.ts';
import { distance } from '../plane/point.ts';
import type { TurnedApproach } from './cached-ways.ts';
import { pathCost } from './collision-cost.ts';
import type { PassageLine } from './passage-line.ts';
import type { WayQuery, WaySurroundings } from './way-between.ts';

/**
 * What a way costs: the seconds that it takes at its gait, a turn on the spot included, and the penalties by which the
 * router chooses ways, ridden as metres at that gait.
 */
export function wayPrice({ by, approach }: TurnedApproach, { gait }: WayQuery, { horse }: WaySurroundings): Seconds {
  return (Math.abs(by) / (2 * Math.PI)) * horse.turn.value + approach.cost / speed(horse, gait);
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
