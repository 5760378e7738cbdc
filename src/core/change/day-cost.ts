import type { Seconds } from '../measure/quantity.ts';
import type { DayTimes } from './day-times.ts';

/** What an order of a day is judged by, the first that differs decides; less is better in each. */
export interface DayCost {
  /** How many fixed things are not kept: starts that are missed, and blocks of a judge after the first. */
  readonly broken: number;
  /** All lateness at fixed starts together. */
  readonly late: Seconds;
  readonly finish: Seconds;
  readonly changing: Seconds;
}

/** Sums of the same times in another order differ by less. */
const ROUNDING = 1e-6;

const RANKED = ['broken', 'late', 'finish', 'changing'] as const;

export function dayCost({ broken, finish, changing }: DayTimes): DayCost {
  let [count, late] = [0, 0];
  for (const each of broken) {
    count += each.kind === 'late' ? 1 : each.blocks - 1;
    late += each.kind === 'late' ? each.by : 0;
  }
  return { broken: count, late, finish, changing };
}

/** Negative when the first is better, 0 when they are as good. */
export function comparedCosts(a: DayCost, b: DayCost): number {
  for (const part of RANKED) {
    if (Math.abs(a[part] - b[part]) > ROUNDING) return a[part] - b[part];
  }
  return 0;
}
