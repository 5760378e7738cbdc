import type { ChangeOver } from '../../core/change/change-over.ts';
import { crewOf } from '../../core/change/crew.ts';
import { type DaySaving, type DaySavings, daySavings } from '../../core/change/day-savings.ts';
import { type ChangeEnds, crewChange, layoutChangeOver } from '../../core/change/layout-change-over.ts';
import type { Course } from '../../core/course/course.ts';
import { setOutOf } from '../../core/setout/plan-setout.ts';
import type { SetOut } from '../../core/setout/setout.ts';
import { survey } from '../../core/survey.ts';
import { type AsBuiltAnswer, type AsBuiltQuestion, asBuiltAnswer } from '../setout/as-built-answer.ts';

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

/** How the shown layout is set out by the course's own crew. */
export interface SetOutQuestion {
  readonly kind: 'set-out';
  readonly course: Course;
}

/** Something that would make the day shorter, with the course in which it is done where that is an edit. */
export interface TriedSaving extends Omit<DaySaving, 'edit'> {
  readonly course?: Course;
}

/** The day as its classes are ordered now, in the order that is best, and what else would save time. */
export interface DayPlan extends Omit<DaySavings, 'savings'> {
  readonly savings: readonly TriedSaving[];
}

/** What may be asked of the planner, and what it answers. */
export type Question = ChangeOverQuestion | DayQuestion | SetOutQuestion | AsBuiltQuestion;
export type AnswerTo<Q extends Question> = Q extends ChangeOverQuestion
  ? ChangeOver
  : Q extends SetOutQuestion
    ? SetOut
    : Q extends AsBuiltQuestion
      ? AsBuiltAnswer
      : DayPlan | null;

/** A crew of more than this is in its own way. */
const LARGEST_CREW = 4;

/** The plan of a day as plain data; null where the course has no day. */
function dayPlan(course: Course): DayPlan | null {
  const { people } = crewOf(course);
  const more = { people: people + 1, change: crewChange(course, people + 1) };
  const crews = { crew: crewChange(course), ...(people < LARGEST_CREW ? { more } : {}) };
  const plan = daySavings(course, crews);
  if (plan === undefined) return null;
  const savings = plan.savings.map(({ kind, says, saves, edit }): TriedSaving => {
    return edit === undefined ? { kind, says, saves } : { kind, says, saves, course: edit(course) };
  });
  return { ...plan, savings };
}

/** Answers a question: in the worker, or wherever there is none. */
export function answered(question: Question): ChangeOver | SetOut | AsBuiltAnswer | DayPlan | null {
  switch (question.kind) {
    case 'change-over':
      return layoutChangeOver(question.course, question);
    case 'set-out':
      return setOutOf(survey(question.course));
    case 'as-built':
      return asBuiltAnswer(question);
    case 'day':
      return dayPlan(question.course);
  }
}
