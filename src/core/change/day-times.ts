import type { Seconds } from '../measure/quantity.ts';
import type { DayProblem, DayTask } from './day-problem.ts';
import { type DayState, dayStep, type TimeSpan } from './day-step.ts';

/** A class that begins no more than this after its fixed start is on time. One minute: estimate. */
export const ON_TIME: Seconds = 60;

/** A class in the timetable. */
export interface ClassTimes extends TimeSpan {
  readonly id: string;
  readonly layout: string;
  /** The change-over to its layout; of the same length at both ends where the layout lies already. */
  readonly change: TimeSpan;
  /** Within the class. */
  readonly drags: readonly TimeSpan[];
  /** How long nothing is done before it: until a break, its fixed start, or until riders have rested. */
  readonly idle: Seconds;
}

/** A break in the timetable. */
export interface BreakTimes extends TimeSpan {
  readonly id: string;
}

/** What of the fixed things an order does not keep. */
export type BrokenRule =
  | { readonly kind: 'late'; readonly id: string; readonly by: Seconds }
  | { readonly kind: 'judge'; readonly judge: string; readonly blocks: number };

/** A class that waits because riders have not had their rest. */
export interface RiderWait {
  readonly id: string;
  /** The class that they rode before. */
  readonly before: string;
  readonly riders: readonly string[];
  /** What they would have had without waiting, and what they need. */
  readonly rest: Seconds;
  readonly wanted: Seconds;
  /** How long the class is held up for it. */
  readonly waits: Seconds;
}

/** A day in one order of its classes. */
export interface DayTimes {
  readonly order: readonly string[];
  readonly starts: Seconds;
  readonly classes: readonly ClassTimes[];
  readonly breaks: readonly BreakTimes[];
  /** The taking down of the last layout. */
  readonly takingDown: TimeSpan;
  readonly finish: Seconds;
  /** Seconds of changing over, setting out and taking down with it. */
  readonly changing: Seconds;
  readonly broken: readonly BrokenRule[];
  readonly waits: readonly RiderWait[];
}

/** In how many blocks each judge's classes are, by name. */
export function judgeBlocks(tasks: readonly DayTask[]): ReadonlyMap<string, number> {
  const blocks = new Map<string, number>();
  for (const [i, { judge }] of tasks.entries()) {
    if (judge !== undefined && tasks[i - 1]?.judge !== judge) blocks.set(judge, (blocks.get(judge) ?? 0) + 1);
  }
  return blocks;
}

function sharedRiders(a: DayTask, b: DayTask): readonly string[] {
  return a.riders.filter((rider) => b.riders.includes(rider));
}

/** Seconds of breaks after a time: before it the crew changed over. */
export function breaksAfter(breaks: readonly TimeSpan[], time: Seconds): Seconds {
  return breaks.reduce((sum, { from, to }) => sum + Math.max(0, to - Math.max(from, time)), 0);
}

/** The tasks in an order of all their ids. Throws when it is none. */
function orderedTasks({ tasks }: DayProblem, order: readonly string[]): readonly DayTask[] {
  const byId = new Map(tasks.map((task) => [task.id, task]));
  const found = order.flatMap((id) => byId.get(id) ?? []);
  if (found.length !== tasks.length || new Set(order).size !== tasks.length) {
    throw new Error(`dayTimes: ${order.join(', ')} is no order of ${tasks.map(({ id }) => id).join(', ')}`);
  }
  return found;
}

/** The latest class before whose riders hold a task up, and from when they are rested. */
function riderHold(done: readonly { readonly task: DayTask; readonly to: Seconds }[], task: DayTask, rest: Seconds) {
  if (task.riders.length === 0) return { hold: undefined, rested: 0 };
  let hold: { readonly before: DayTask; readonly ended: Seconds; readonly riders: readonly string[] } | undefined;
  for (const { task: before, to } of done) {
    const riders = sharedRiders(before, task);
    if (riders.length > 0 && (hold === undefined || to >= hold.ended)) hold = { before, ended: to, riders };
  }
  return { hold, rested: hold === undefined ? 0 : hold.ended + rest };
}

/**
 * The timetable of a day in an order of its classes. A class waits for its fixed start and for riders to rest; what it
 * cannot keep is told as broken.
 */
export function dayTimes(problem: DayProblem, order: readonly string[]): DayTimes {
  const tasks = orderedTasks(problem, order);
  const done: { task: DayTask; to: Seconds }[] = [];
  const classes: ClassTimes[] = [];
  const breaks: BreakTimes[] = [];
  const broken: BrokenRule[] = [];
  const waits: RiderWait[] = [];
  let state: DayState = { ended: problem.starts, layout: null, breaks: 0 };
  for (const task of tasks) {
    const { hold, rested } = riderHold(done, task, problem.rest);
    const step = dayStep(problem, state, task, rested);
    const { id, layout } = task;
    const { from, to, change } = step;
    const idle = from - change.to - breaksAfter(step.breaks, change.to);
    const drags = task.drags.map((drag) => ({ from: from + drag.from, to: from + drag.to }));
    classes.push({ id, layout, from, to, change, drags, idle });
    for (const { index, ...span } of step.breaks) {
      const own = problem.breaks[index];
      if (own !== undefined) breaks.push({ id: own.id, ...span });
    }
    if (task.startsAt !== undefined && from > task.startsAt + ON_TIME) {
      broken.push({ kind: 'late', id, by: from - task.startsAt });
    }
    // Without the hold it would have begun earlier, if it was the hold that it waited for.
    if (hold !== undefined && rested > state.ended) {
      const { before, riders, ended } = hold;
      const alone = dayStep(problem, state, task, 0).from;
      const rest = alone - ended;
      if (from > alone) waits.push({ id, before: before.id, riders, rest, wanted: problem.rest, waits: from - alone });
    }
    done.push({ task, to });
    state = step.after;
  }
  for (const [judge, blocks] of judgeBlocks(tasks)) if (blocks > 1) broken.push({ kind: 'judge', judge, blocks });
  const takingDown = { from: state.ended, to: state.ended + problem.changeOver(state.layout, null) };
  const changing = [...classes.map(({ change }) => change), takingDown].reduce(
    (sum, { from, to }) => sum + to - from,
    0,
  );
  return {
    ...{ order, starts: problem.starts, classes, breaks, takingDown, finish: takingDown.to },
    ...{ changing, broken, waits },
  };
}
