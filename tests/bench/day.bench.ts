/** The order of a day's classes against the best of all orders. */
import { bestOrder } from '../../src/core/change/day-order.ts';
import { bestOfAll, randomDay } from '../core/change/random-days.ts';
import { percentile, type Row, row } from './row.ts';

const DAYS = 50;
const CLASSES = 9;

export async function rows(): Promise<Row[]> {
  const took: number[] = [];
  const tried: number[] = [];
  let [finish, changing, broken] = [0, 0, 0];
  for (let seed = 1; seed <= DAYS; seed += 1) {
    const problem = randomDay(seed, CLASSES);
    const begun = performance.now();
    const { cost } = bestOrder(problem);
    const between = performance.now();
    const best = bestOfAll(problem);
    took.push(between - begun);
    tried.push(performance.now() - between);
    finish = Math.max(finish, Math.abs(cost.finish - best.finish));
    changing = Math.max(changing, Math.abs(cost.changing - best.changing));
    broken = Math.max(broken, Math.abs(cost.broken - best.broken));
  }
  const long = Array.from({ length: 10 }, (_, i) => {
    const problem = randomDay(i + 1, 13);
    const begun = performance.now();
    const { proven } = bestOrder(problem);
    return { ms: performance.now() - begun, proven };
  });
  const name = `${DAYS} days of ${CLASSES} classes`;
  const best = { anchor: 0, anchorName: 'the best of all orders' };
  const whole = (value: number): number => (value < 1e-6 ? 0 : value);
  return [
    row(`${name}: finish, most off`, 's', { ours: whole(finish), ...best }),
    row(`${name}: changing over, most off`, 's', { ours: whole(changing), ...best }),
    row(`${name}: what is broken, most off`, 'count', { ours: broken, ...best }),
    row(`${name}, p50`, 'ms', {
      ours: percentile(took, 0.5),
      anchor: percentile(tried, 0.5),
      anchorName: 'trying all orders',
    }),
    row(`${name}, worst`, 'ms', { ours: percentile(took, 1), anchor: 1000, anchorName: 'goal' }),
    row('10 days of 13 classes, worst', 'ms', {
      ours: Math.max(...long.map(({ ms }) => ms)),
      anchor: 10_000,
      anchorName: 'goal',
    }),
    row('10 days of 13 classes: proven', 'days', {
      ours: long.filter(({ proven }) => proven).length,
      anchor: 10,
      anchorName: 'all',
    }),
  ];
}
