/** One class after another in a day: the arithmetic that the timetable and the search for an order share. */
import type { Seconds } from '../measure/quantity.ts';
import type { DayProblem, DayTask } from './day-problem.ts';

/** Where a day has got to: when the class before ended, which layout lies, and how many breaks are over. */
export interface DayState {
  readonly ended: Seconds;
  readonly layout: string | null;
  /** How many of the day's breaks, the earliest first, have been taken. */
  readonly breaks: number;
}

/** A span of the day, seconds. */
export interface TimeSpan {
  readonly from: Seconds;
  readonly to: Seconds;
}

/** A class put after a state. */
export interface DayStep {
  readonly change: TimeSpan;
  readonly breaks: readonly (TimeSpan & { readonly index: number })[];
  readonly from: Seconds;
  readonly to: Seconds;
  readonly after: DayState;
}

/**
 * When a class is ridden after a state. The crew changes over at once, also during a break; then the class waits for its
 * fixed start, for riders who rode before (`rested`, seconds of the day), and for the breaks that are due before it begins.
 * A break begins at its time or when the class before has ended. So an earlier state never ends later than a later one.
 */
export function dayStep(problem: DayProblem, state: DayState, task: DayTask, rested: Seconds): DayStep {
  const changed = state.ended + problem.changeOver(state.layout, task.layout);
  const breaks: (TimeSpan & { readonly index: number })[] = [];
  let from = Math.max(changed, task.startsAt ?? 0, rested);
  let over = state.ended;
  for (let index = state.breaks; index < problem.breaks.length; index += 1) {
    const due = problem.breaks[index];
    if (due === undefined) break;
    const begins = Math.max(due.from, over);
    if (begins > from) break;
    over = begins + due.length;
    from = Math.max(from, over);
    breaks.push({ index, from: begins, to: over });
  }
  const to = from + task.seconds;
  return {
    change: { from: state.ended, to: changed },
    breaks,
    from,
    to,
    after: { ended: to, layout: task.layout, breaks: state.breaks + breaks.length },
  };
}
