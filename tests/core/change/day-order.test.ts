import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { comparedCosts } from '../../../src/core/change/day-cost.ts';
import { bestOrder, givenOrder } from '../../../src/core/change/day-order.ts';
import type { DayProblem } from '../../../src/core/change/day-problem.ts';
import { bestOfAll, changes, randomDay, task } from './random-days.ts';
import '../../property-seed.ts';

const HOUR = 3600;

function day(more: Partial<DayProblem>): DayProblem {
  return { starts: 8 * HOUR, tasks: [], breaks: [], rest: 0, changeOver: changes({}), ...more };
}

describe('the order of a day', () => {
  test('puts classes of one layout together', () => {
    const layouts = ['x', 'y', 'x', 'y'];
    const problem = day({ tasks: layouts.map((layout, i) => task(`${layout}${i}`, 30, { layout })) });
    const { times, proven } = bestOrder(problem);
    expect(times.order).toEqual(['x0', 'x2', 'y1', 'y3']);
    expect(proven).toBe(true);
    // Three change-overs of ten minutes in place of five.
    expect(givenOrder(problem).times.finish - times.finish).toBe(1200);
  });

  test('keeps a fixed start though another order would end earlier', () => {
    const table = { '- x': 5, '- y': 5, 'x y': 5, 'y x': 60, 'x -': 5, 'y -': 5 };
    const free = day({ tasks: [task('x', 60), task('y', 60)], changeOver: changes(table) });
    expect(bestOrder(free).times.order).toEqual(['x', 'y']);
    const tasks = [task('x', 60), task('y', 60, { startsAt: 8 * HOUR + 300 })];
    const held = bestOrder({ ...free, tasks });
    expect(held.times.order).toEqual(['y', 'x']);
    expect(held.times.broken).toEqual([]);
  });

  test('keeps a judge in one block though another order would end earlier', () => {
    const tasks = [
      task('a', 30, { layout: 'x', judge: 'J' }),
      task('b', 30, { layout: 'x' }),
      task('c', 30, { layout: 'y', judge: 'J' }),
      task('d', 30, { layout: 'x' }),
    ];
    const { times } = bestOrder(day({ tasks }));
    expect(times.broken).toEqual([]);
    expect(Math.abs(times.order.indexOf('a') - times.order.indexOf('c'))).toBe(1);
  });

  test('breaks least where not everything can be kept, and says what', () => {
    const nine = { startsAt: 9 * HOUR };
    const tasks = [task('a', 60, nine), task('b', 30, nine), task('c', 20, nine)];
    const { times, cost } = bestOrder(day({ tasks }));
    expect(cost.broken).toBe(2);
    expect(times.order).toEqual(['c', 'b', 'a']);
    // c ends at 9:20, b begins at 9:30 and ends at 10:00, a begins at 10:10.
    expect(times.broken).toEqual([
      { kind: 'late', id: 'b', by: 1800 },
      { kind: 'late', id: 'a', by: 4200 },
    ]);
  });

  test('leaves the given order where none is better', () => {
    const tasks = [task('b', 30), task('a', 30)];
    expect(bestOrder(day({ tasks })).times.order).toEqual(['b', 'a']);
    expect(bestOrder(day({})).times.order).toEqual([]);
  });

  test('is as good as the best of all orders', () => {
    fc.assert(
      fc.property(fc.nat(1_000_000), fc.integer({ min: 1, max: 6 }), (seed, count) => {
        const problem = randomDay(seed, count);
        const [found, best] = [bestOrder(problem), bestOfAll(problem)];
        expect(found.proven).toBe(true);
        expect(comparedCosts(found.cost, best)).toBe(0);
      }),
      { numRuns: 150 },
    );
  });

  test('is as good as the best of all orders of eight classes', () => {
    const problem = randomDay(2, 8);
    expect(comparedCosts(bestOrder(problem).cost, bestOfAll(problem))).toBe(0);
  });

  test('of more classes is searched for, never worse than given, the same for one seed, and not called proven', () => {
    const problem = randomDay(3, 15);
    const found = bestOrder(problem);
    expect(found.proven).toBe(false);
    expect(comparedCosts(found.cost, givenOrder(problem).cost)).toBeLessThan(0);
    expect(bestOrder(problem)).toEqual(found);
  });
});
