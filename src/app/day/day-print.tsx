import { useCallback } from 'react';
import type { Course } from '../../core/course/course.ts';
import { dayPages } from '../../sheets/day.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
import { dayWords } from '../../words/day.ts';
import type { DayPlan } from '../change/plan-questions.ts';
import { PrintDialog } from '../post/print-dialog.tsx';

/** The day on paper, in the order in which its classes stand. */
export function DayPrint({
  planned,
  course,
  close,
}: {
  readonly planned: DayPlan;
  readonly course: Course;
  close(): void;
}) {
  const { times } = planned.given;
  const draw = useCallback(({ paper }: PageOptions) => dayPages(course, { paper, times }), [course, times]);
  return <PrintDialog title={dayWords.onPaper} sheet="day" draw={draw} close={close} />;
}
