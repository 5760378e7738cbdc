import type { Course } from '../../core/course/course.ts';
import type { DayPlan } from '../change/plan-questions.ts';

/** The day on paper. */
export function DayPrint(_: { readonly planned: DayPlan; readonly course: Course; close(): void }) {
  return null;
}
