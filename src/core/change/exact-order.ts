/**
 * The best order of a day by dynamic programming over subsets of its classes. For each subset and last class it keeps every
 * beginning that no other beats in all respects (Pareto): what is broken, how late, when it ended, how much was changed
 * over, and until when riders rest. So the best order is among what is left at the end.
 */
import type { Seconds } from '../measure/quantity.ts';
import { dayBound } from './day-bound.ts';
import { comparedCosts, type DayCost } from './day-cost.ts';
import type { DayProblem, DayTask } from './day-problem.ts';
import { type DayState, dayStep } from './day-step.ts';
import { ON_TIME } from './day-times.ts';

/** One beginning of a day. */
interface Label {
  readonly before: Label | undefined;
  readonly task: number;
  readonly state: DayState;
  readonly broken: number;
  readonly late: Seconds;
  readonly changing: Seconds;
  /** Pairs of classes that are not in the given order any more. */
  readonly inversions: number;
  /** By task that shares riders with another: from when all of its riders that rode before are rested. */
  readonly rested: readonly Seconds[];
}

/** Sums of the same times in another order differ by less. */
const ROUNDING = 1e-7;
/** More beginnings than this are not kept in memory: the day is then left to a search. */
const MOST_LABELS = 600_000;

interface Context {
  readonly problem: DayProblem;
  readonly tasks: readonly DayTask[];
  /** By two tasks: whether a rider rides in both. */
  readonly shares: readonly (readonly boolean[])[];
  /** Seconds of the first so many breaks together. */
  readonly breakSums: readonly Seconds[];
}

function contextOf(problem: DayProblem): Context {
  const { tasks, breaks } = problem;
  const shares = tasks.map((a) => tasks.map((b) => a !== b && a.riders.some((rider) => b.riders.includes(rider))));
  const breakSums = [0];
  for (const { length } of breaks) breakSums.push((breakSums.at(-1) ?? 0) + length);
  return { problem, tasks, shares, breakSums };
}

/** Whether no end of the day is worse after `a` than after `b`: a break that only `b` has behind it may still come. */
function beats({ breakSums }: Context, a: Label, b: Label): boolean {
  if (a.broken > b.broken || a.late > b.late + ROUNDING || a.changing > b.changing + ROUNDING) return false;
  const still = Math.max(0, (breakSums[b.state.breaks] ?? 0) - (breakSums[a.state.breaks] ?? 0));
  if (a.state.ended + still > b.state.ended + ROUNDING) return false;
  return a.rested.every((rested, i) => rested <= Math.max(b.rested[i] ?? 0, b.state.ended) + ROUNDING);
}

/**
 * Adds a beginning unless another beats it, and takes away those that it beats; of two that are as good the nearer to the
 * given order stays. Says by how many the list grew.
 */
function keep(context: Context, list: Label[], label: Label): number {
  const staysBefore = (each: Label): boolean =>
    beats(context, each, label) && !(label.inversions < each.inversions && beats(context, label, each));
  if (list.some(staysBefore)) return 0;
  const count = list.length;
  let left = 0;
  for (const each of list) if (!beats(context, label, each)) list[left++] = each;
  list.length = left;
  list.push(label);
  return list.length - count;
}

/** Whether a judge had a class before and another judge's, or nobody's, came between. */
function splitsJudge({ tasks }: Context, mask: number, last: DayTask | undefined, { judge }: DayTask): boolean {
  if (judge === undefined || judge === last?.judge) return false;
  return tasks.some((task, i) => ((mask >> i) & 1) === 1 && task.judge === judge);
}

function extended(context: Context, before: Label | undefined, mask: number, next: number): Label {
  const { problem, tasks, shares } = context;
  const task = tasks[next];
  if (task === undefined) throw new Error(`exactOrder: there is no task ${next}`);
  const state = before?.state ?? { ended: problem.starts, layout: null, breaks: 0 };
  const step = dayStep(problem, state, task, before?.rested[next] ?? 0);
  const by = task.startsAt === undefined ? 0 : step.from - task.startsAt;
  const isLate = by > ON_TIME;
  const splits = splitsJudge(context, mask, before === undefined ? undefined : tasks[before.task], task);
  const own = shares[next] ?? [];
  const was = before?.rested ?? [];
  const rested =
    own.some(Boolean) || was.length > 0
      ? tasks.map((_, i) => {
          if (((mask >> i) & 1) === 1 || i === next) return 0;
          return own[i] ? Math.max(was[i] ?? 0, step.to + problem.rest) : (was[i] ?? 0);
        })
      : was;
  let passed = 0;
  for (let i = 0; i < next; i += 1) passed += 1 - ((mask >> i) & 1);
  return {
    before,
    task: next,
    inversions: (before?.inversions ?? 0) + passed,
    state: step.after,
    broken: (before?.broken ?? 0) + (isLate ? 1 : 0) + (splits ? 1 : 0),
    late: (before?.late ?? 0) + (isLate ? by : 0),
    changing: (before?.changing ?? 0) + step.change.to - step.change.from,
    rested,
  };
}

function costOf({ problem }: Context, { broken, late, changing, state }: Label): DayCost {
  const down = problem.changeOver(state.layout, null);
  return { broken, late, finish: state.ended + down, changing: changing + down };
}

function orderOf({ tasks }: Context, label: Label): readonly string[] {
  const order: string[] = [];
  for (let here: Label | undefined = label; here !== undefined; here = here.before)
    order.push(tasks[here.task]?.id ?? '');
  return order.reverse();
}

/**
 * The best order, where an order of cost `atMost` is known; undefined where there are too many beginnings to keep, or more
 * than 20 classes. What cannot end as well as the known order is not followed.
 */
export function exactOrder(problem: DayProblem, atMost: DayCost): readonly string[] | undefined {
  const context = contextOf(problem);
  const count = problem.tasks.length;
  if (count === 0) return [];
  if (count > 20) return undefined;
  const full = (1 << count) - 1;
  const boundOf = dayBound(problem);
  let labels = 0;
  /** By subset: by last class. A subset comes after all of its own subsets. */
  const table: (Label[][] | undefined)[] = [];
  const put = (mask: number, next: number, before: Label | undefined): void => {
    const to = mask | (1 << next);
    const label = extended(context, before, mask, next);
    if (to !== full) {
      const bound = boundOf({ ...label, judge: problem.tasks[next]?.judge }, to);
      if (comparedCosts(bound, atMost) > 0) return;
    }
    const lists = table[to] ?? Array.from({ length: count }, () => []);
    table[to] = lists;
    labels += keep(context, lists[next] ?? [], label);
  };
  for (let next = 0; next < count; next += 1) put(0, next, undefined);
  for (let mask = 1; mask < full; mask += 1) {
    const lists = table[mask];
    if (lists === undefined) continue;
    for (const label of lists.flat()) {
      for (let next = 0; next < count; next += 1) if (((mask >> next) & 1) === 0) put(mask, next, label);
    }
    if (labels > MOST_LABELS) return undefined;
    table[mask] = undefined;
  }
  const [best] = (table[full] ?? [])
    .flat()
    .sort((a, b) => comparedCosts(costOf(context, a), costOf(context, b)) || a.inversions - b.inversions);
  return best === undefined ? undefined : orderOf(context, best);
}
