import type { Course } from '../core/course/course.ts';
import { type History, type HistoryStep, presentCourse, type RecalledSteps } from '../core/course/history.ts';
import { writeCourse } from '../core/files/write.ts';
import type { SavedStep, StepChange } from './store.ts';

/** So many steps of a history are kept; the oldest go first. */
export const MOST_STEPS = 100;

/** What a save of a history writes. */
export interface HistoryChange {
  /** The number of the present step. */
  readonly present: number;
  readonly change: StepChange;
}

/** Which steps of one slot's history are stored, and under which numbers: only new ones have to be written. */
export interface StepLog {
  changeOf(history: History): HistoryChange;
  /** The change was written. */
  wrote(history: History, change: HistoryChange): void;
  /** There was no room for the steps before the present one, and there is no attempt to store them again. */
  dropped(history: History): void;
  /** The steps around the opened course, with the number of the first of them. */
  recalled(steps: RecalledSteps, first: number): void;
  /** The step of the opened course is not stored: it has to be written. */
  missed(): void;
}

/** A course that was opened as one step of a stored history. */
export interface OpenedStep {
  readonly course: Course;
  readonly number: number;
}

/** Of a slot that is new, or whose stored course is open as `opened`. */
export function stepLog(slot: string, opened?: OpenedStep): StepLog {
  let numbers = new WeakMap<HistoryStep, number>();
  let anchor = opened;
  let isAnchorStored = opened !== undefined;
  /** Steps after the opened one are stored that were not read yet. */
  let hasUnread = opened !== undefined;
  let least = 0;

  const numberOf = (step: HistoryStep) =>
    numbers.get(step) ?? (step.course === anchor?.course ? anchor.number : undefined);
  const isStored = (step: HistoryStep) => numbers.has(step) || (isAnchorStored && step.course === anchor?.course);

  /** The number of the first step; undefined when no step is known: the history is another one. */
  function firstNumber({ steps }: History): number | undefined {
    for (const [index, step] of steps.entries()) {
      const number = numberOf(step);
      if (number !== undefined) return number - index;
    }
    return undefined;
  }

  return {
    changeOf(history) {
      const { steps, present } = history;
      const known = firstNumber(history);
      const begin = known ?? 1;
      const from = Math.max(0, Math.min(present, steps.length - MOST_STEPS));
      const to = Math.min(steps.length, from + MOST_STEPS);
      const put = steps.slice(from, to).flatMap((step, i): readonly SavedStep[] => {
        const number = begin + from + i;
        if (known !== undefined && (number < least || isStored(step))) return [];
        return [{ slot, number, label: step.label, text: writeCourse(step.course) }];
      });
      const last = begin + to - 1;
      const isUntouched = known !== undefined && hasUnread && steps.length === 1;
      const change = isUntouched
        ? { put, first: 0, last: Number.MAX_SAFE_INTEGER }
        : { put, first: known === undefined ? begin : Math.max(0, last - MOST_STEPS + 1), last };
      return { present: begin + present, change };
    },
    wrote(history, { present, change }) {
      const begin = present - history.present;
      for (const { number } of change.put) {
        const step = history.steps[number - begin];
        if (step !== undefined) numbers.set(step, number);
      }
      if (change.last < Number.MAX_SAFE_INTEGER) hasUnread = false;
    },
    dropped(history) {
      const number = (firstNumber(history) ?? 1) + history.present;
      numbers = new WeakMap();
      anchor = { course: presentCourse(history), number };
      isAnchorStored = false;
      hasUnread = false;
      least = number;
    },
    recalled({ before, after }, first) {
      for (const [i, step] of before.entries()) numbers.set(step, first + i);
      for (const [i, step] of after.entries()) numbers.set(step, first + before.length + 1 + i);
      hasUnread = false;
    },
    missed() {
      isAnchorStored = false;
    },
  };
}
