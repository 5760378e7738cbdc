import type { ChangeOver } from '../../core/change/change-over.ts';
import { type LayoutChange, layoutChangeOver } from '../../core/change/layout-change-over.ts';
import type { Course } from '../../core/course/course.ts';

/** What may be asked of the planner. */
export interface Question extends LayoutChange {
  readonly kind: 'change-over';
  readonly course: Course;
}

export interface Answer {
  readonly kind: 'change-over';
  readonly plan: ChangeOver;
}

/** Answers a question: in the worker, or wherever there is none. */
export function answered(question: Question): Answer {
  return { kind: 'change-over', plan: layoutChangeOver(question.course, question) };
}
