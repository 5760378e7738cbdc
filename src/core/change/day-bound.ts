import type { Seconds } from '../measure/quantity.ts';
import type { DayCost } from './day-cost.ts';
import type { DayProblem, DayTask } from './day-problem.ts';
import type { DayState } from './day-step.ts';
import { ON_TIME } from './day-times.ts';

/** A day as far as it has got. */
interface DayBeginning extends Omit<DayCost, 'finish'> {
  readonly state: DayState;
  /** The judge of the last class. */
  readonly judge: string | undefined;
}

/** What the classes that are left need at least, whatever their order. */
interface Remainder {
  readonly tasks: readonly DayTask[];
  readonly seconds: Seconds;
  readonly longest: Seconds;
  readonly layouts: readonly string[];
  /** The least that takes one of their layouts down. */
  readonly down: Seconds;
}

function remainderOf(problem: DayProblem, tasks: readonly DayTask[]): Remainder {
  const layouts = [...new Set(tasks.map(({ layout }) => layout))];
  return {
    tasks,
    layouts,
    seconds: tasks.reduce((sum, { seconds }) => sum + seconds, 0),
    longest: Math.max(0, ...tasks.map(({ seconds }) => seconds)),
    down: Math.min(...layouts.map((layout) => problem.changeOver(layout, null))),
  };
}

/**
 * Costs that no end of a day can come under: every layout that is left is set out once at its least, every class ridden,
 * every break taken that is due before the last of them, and a fixed start that is over already is missed.
 */
export function dayBound(problem: DayProblem): (begun: DayBeginning, mask: number) => DayCost {
  const all = [...new Set(problem.tasks.map(({ layout }) => layout))];
  const least = new Map(
    all.map((to) => [
      to,
      Math.min(...[null, ...all.filter((from) => from !== to)].map((from) => problem.changeOver(from, to))),
    ]),
  );
  const isAlone = new Set(all.filter((id) => problem.tasks.filter(({ layout }) => layout === id).length === 1));
  const remainders = new Map<number, Remainder>();
  return ({ state, broken, late, changing, judge }, mask) => {
    const known = remainders.get(mask);
    const rest =
      known ??
      remainderOf(
        problem,
        problem.tasks.filter((_, i) => ((mask >> i) & 1) === 0),
      );
    if (known === undefined) remainders.set(mask, rest);
    const entering = rest.layouts.reduce((sum, id) => sum + (id === state.layout ? 0 : (least.get(id) ?? 0)), 0);
    const lastFrom = state.ended + rest.seconds - rest.longest;
    let breaks = 0;
    for (const { from, length } of problem.breaks.slice(state.breaks)) if (from <= lastFrom) breaks += length;
    let finish = state.ended + rest.seconds + Math.max(entering, breaks) + rest.down;
    let [missed, by] = [0, 0];
    for (const { startsAt, seconds, layout } of rest.tasks) {
      if (startsAt === undefined) continue;
      const from = state.ended + (isAlone.has(layout) && layout !== state.layout ? (least.get(layout) ?? 0) : 0);
      finish = Math.max(finish, startsAt + seconds + rest.down);
      if (from <= startsAt + ON_TIME) continue;
      missed += 1;
      by += from - startsAt;
    }
    const split = new Set(
      rest.tasks.flatMap((task) => (task.judge !== undefined && task.judge !== judge ? [task.judge] : [])),
    );
    for (const [i, task] of problem.tasks.entries()) {
      if (((mask >> i) & 1) === 1 && task.judge !== undefined && split.delete(task.judge)) missed += 1;
    }
    return { broken: broken + missed, late: late + by, finish, changing: changing + entering + rest.down };
  };
}
