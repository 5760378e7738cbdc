import type { Course } from '../../core/course/course.ts';
import { memoizeByText } from '../../core/memo/by-identity.ts';
import { useSettledCourse } from '../desk-context.tsx';
import { EMPTY_ARENA, planStart, useComparedState } from './compared.ts';
import type { ChangeOverQuestion } from './plan-questions.ts';
import { type Answered, useAnswer } from './use-answer.ts';

/** The same object for the same course and start, so that the panel and the arena ask it once. */
const questionOf = memoizeByText((course: Course, from: string): ChangeOverQuestion => {
  return { kind: 'change-over', course, from: from === EMPTY_ARENA ? null : from, to: course.current };
});

/** The change-over to the shown layout from its start, with the course that it is asked of. */
export interface AskedChangeOver extends Answered<ChangeOverQuestion> {
  readonly course: Course;
  /** The id of a layout; null: the empty arena. */
  readonly from: string | null;
}

export function useChangeOver(): AskedChangeOver {
  const course = useSettledCourse();
  const from = planStart(
    course,
    useComparedState((state) => state),
  );
  return { ...useAnswer(questionOf(course, from ?? EMPTY_ARENA)), course, from };
}
