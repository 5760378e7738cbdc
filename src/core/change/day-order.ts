import { comparedCosts, type DayCost, dayCost } from './day-cost.ts';
import type { DayProblem } from './day-problem.ts';
import { type DayTimes, dayTimes } from './day-times.ts';
import { exactOrder } from './exact-order.ts';
import { seededRandom } from './seeded-random.ts';

/** An order of the classes of a day. */
export interface DayOrder {
  readonly times: DayTimes;
  readonly cost: DayCost;
  /** No other order is better. */
  readonly proven: boolean;
}

/** Up to this many classes every order is weighed; beyond it takes too long to wait for. */
const MOST_EXACT = 13;
/** How often the search for more classes begins anew from a shaken order. */
const ROUNDS = 30;

function ordered(problem: DayProblem, order: readonly string[]): Omit<DayOrder, 'proven'> {
  const times = dayTimes(problem, order);
  return { times, cost: dayCost(times) };
}

/** The order with the class at one place put to another. */
function moved(order: readonly string[], from: number, to: number): readonly string[] {
  const next = [...order];
  next.splice(to, 0, ...next.splice(from, 1));
  return next;
}

function swapped(order: readonly string[], a: number, b: number): readonly string[] {
  const next = [...order];
  [next[a], next[b]] = [order[b] ?? '', order[a] ?? ''];
  return next;
}

/** Moves and swaps single classes for as long as that is better. */
function climbed(problem: DayProblem, begin: readonly string[]): Omit<DayOrder, 'proven'> {
  let best = ordered(problem, begin);
  for (let better = true; better; ) {
    better = false;
    for (let from = 0; from < begin.length; from += 1) {
      for (let to = 0; to < begin.length; to += 1) {
        if (from === to) continue;
        for (const next of [moved(best.times.order, from, to), swapped(best.times.order, from, to)]) {
          const tried = ordered(problem, next);
          if (comparedCosts(tried.cost, best.cost) < 0) [best, better] = [tried, true];
        }
      }
    }
  }
  return best;
}

/** A good order of many classes: climbs from shaken ones as from the first; the seed decides how they are shaken. */
function searchedOrder(problem: DayProblem, first: Omit<DayOrder, 'proven'>, seed: number): Omit<DayOrder, 'proven'> {
  const roll = seededRandom(seed);
  const { order } = first.times;
  let best = first;
  for (let round = 0; round < ROUNDS; round += 1) {
    let shaken = best.times.order;
    for (let i = 0; i < 4; i += 1) {
      shaken = moved(shaken, Math.floor(roll() * order.length), Math.floor(roll() * order.length));
    }
    const tried = climbed(problem, shaken);
    if (comparedCosts(tried.cost, best.cost) < 0) best = tried;
  }
  return best;
}

/** The classes in the order in which the day has them. */
export function givenOrder(problem: DayProblem): DayOrder {
  return {
    ...ordered(
      problem,
      problem.tasks.map(({ id }) => id),
    ),
    proven: false,
  };
}

/**
 * The order of the classes that keeps most of what is fixed, then ends earliest, then needs the least changing over; the
 * given order where it is as good. Proven up to 13 classes; beyond that the best that a search of given seed finds.
 */
export function bestOrder(problem: DayProblem, { seed = 1 }: { readonly seed?: number } = {}): DayOrder {
  const given = givenOrder(problem);
  const { order } = given.times;
  const near = climbed(problem, order);
  const exact = order.length <= MOST_EXACT ? exactOrder(problem, near.cost) : undefined;
  const found = exact === undefined ? searchedOrder(problem, near, seed) : ordered(problem, exact);
  const best = comparedCosts(found.cost, given.cost) < 0 ? found : given;
  return { ...best, proven: exact !== undefined };
}
