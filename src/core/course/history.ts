import type { Course } from './course.ts';

/** One state in the history, with what led to it. */
export interface Step {
  readonly course: Course;
  /** What a person did: "Move Fan". */
  readonly label: string;
}

/**
 * A list of courses with shared structure, and where we are in it. Undo moves an index and cannot fail.
 */
export interface History {
  readonly steps: readonly [Step, ...Step[]];
  readonly present: number;
}
