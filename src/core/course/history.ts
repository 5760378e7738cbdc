import type { Course } from './course.ts';

/** One state in the history, with what led to it. */
interface HistoryStep {
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
  const [first, ...later] = history.steps;
  const present = history.present + 1;
  return { steps: [first, ...later.slice(0, history.present), { course, label }], present };
}

/** One step back; the same history at its beginning. */
export function undo(history: History): History {
  return history.present === 0 ? history : { ...history, present: history.present - 1 };
}

/** One step forward again; the same history at its end. */
export function redo(history: History): History {
  return history.present === history.steps.length - 1 ? history : { ...history, present: history.present + 1 };
}
