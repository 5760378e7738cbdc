import { useCallback } from 'react';
import { MEASURES } from '../../core/change/measures.ts';
import type { Course } from '../../core/course/course.ts';
import { comparisonPages } from '../../sheets/comparison.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
import { changeWords } from '../../words/change.ts';
import { PrintDialog } from '../post/print-dialog.tsx';
import { useComparedState } from './compared.ts';

/** The comparison on paper, with the measures that the table has. */
export function ComparisonPrint({
  course,
  layouts,
  close,
}: {
  readonly course: Course;
  readonly layouts: readonly string[];
  close(): void;
}) {
  const leftOut = useComparedState((state) => state.leftOut);
  const key = layouts.join(' ');
  const draw = useCallback(
    ({ paper }: PageOptions) =>
      comparisonPages(course, {
        layouts: key.split(' '),
        measures: MEASURES.filter(({ id }) => !leftOut.includes(id)),
        paper,
      }),
    [course, key, leftOut],
  );
  return <PrintDialog title={changeWords.comparisonOnPaper} sheet="comparison" draw={draw} close={close} />;
}
