import type { Course } from './course.ts';

/** One state in the history, with what led to it. */
export interface HistoryStep {
  readonly course: Course;
  /** What a person did: "Move Fan". */
  readonly label: string;
}

/**
 * A list of courses with shared structure, and where we are in it. Undo moves an index and cannot fail.
 */
export interface History {
  readonly steps: readonly [HistoryStep, ...HistoryStep[]];
  readonly present: number;
}

/**
 * So many steps can be undone in one sitting; the oldest go first. Each keeps a course alive, and with it all that was
 * worked out from that course.
 */
export const MOST_UNDOS = 200;

/** A history that begins with this course. */
export function newHistory(course: Course, label = 'Open'): History {
  return { steps: [{ course, label }], present: 0 };
}

/** The course where the history is now. */
export function presentCourse(history: History): Course {
  return (history.steps[history.present] ?? history.steps[0]).course;
}

/** The history with one more step, in place of what was undone. The same history when the course is the same object. */
export function withStep(history: History, course: Course, label: string): History {
  if (course === presentCourse(history)) return history;
  const steps = [...history.steps.slice(0, history.present + 1), { course, label }];
  const [first, ...later] = steps.slice(-MOST_UNDOS - 1);
  if (first === undefined) throw new Error('withStep: the course itself is a step');
  return { steps: [first, ...later], present: later.length };
}

/** One step back; the same history at its beginning. */
export function undo(history: History): History {
  return history.present === 0 ? history : { ...history, present: history.present - 1 };
}

/** One step forward again; the same history at its end. */
export function redo(history: History): History {
  return history.present === history.steps.length - 1 ? history : { ...history, present: history.present + 1 };
}

/** The steps before and after a course that was opened, read later than the course. */
export interface RecalledSteps {
  readonly course: Course;
  /** What led to the course; absent: unknown. */
  readonly label?: string;
  readonly before: readonly HistoryStep[];
  readonly after: readonly HistoryStep[];
}

/**
 * The history with the steps around the course that it began with. What was done since stays, in place of the steps
 * after. The same history when it began with another course.
 */
export function withRecalled(history: History, { course, label, before, after }: RecalledSteps): History {
  const [first, ...since] = history.steps;
  if (first.course !== course) return history;
  const [earliest, ...later] = [
    ...before,
    { course, label: label ?? first.label },
    ...(since.length === 0 ? after : since),
  ];
  if (earliest === undefined) throw new Error('withRecalled: the course itself is a step');
  return { steps: [earliest, ...later], present: before.length + history.present };
}
