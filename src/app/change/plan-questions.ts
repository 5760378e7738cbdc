import type { ChangeOver } from '../../core/change/change-over.ts';
import { bestOrder, type DayOrder, givenOrder } from '../../core/change/day-order.ts';
import { dayProblem } from '../../core/change/day-problem.ts';
import { type ChangeEnds, crewChange, layoutChangeOver } from '../../core/change/layout-change-over.ts';
import type { Course } from '../../core/course/course.ts';

/** What a crew carries from one layout to another. */
export interface ChangeOverQuestion extends ChangeEnds {
  readonly kind: 'change-over';
  readonly course: Course;
}

/** The times of the day's classes, and a better order. */
export interface DayQuestion {
  readonly kind: 'day';
  readonly course: Course;
}

/** The day as its classes are ordered now, and in the order that is best. */
export interface DayPlan {
  readonly given: DayOrder;
  readonly best: DayOrder;
}

/** What may be asked of the planner, and what it answers. */
export type Question = ChangeOverQuestion | DayQuestion;
export type AnswerTo<Q extends Question> = Q extends ChangeOverQuestion ? ChangeOver : DayPlan | null;

/** Answers a question: in the worker, or wherever there is none. A course without a day has no plan of one. */
export function answered(question: Question): ChangeOver | DayPlan | null {
  if (question.kind === 'change-over') return layoutChangeOver(question.course, question);
  const problem = dayProblem(question.course, crewChange(question.course));
  return problem === undefined ? null : { given: givenOrder(problem), best: bestOrder(problem) };
}
