import { useCallback } from 'react';
import type { Course } from '../../core/course/course.ts';
import { changeOverPages } from '../../sheets/change-over.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
import { PrintDialog } from '../post/print-dialog.tsx';

/** The crew's sheet of a change-over. */
export function ChangeOverPrint({
  course,
  from,
  to,
  close,
}: {
  readonly course: Course;
  /** Ids of layouts; null: the empty arena. */
  readonly from: string | null;
  readonly to: string | null;
  close(): void;
}) {
  const draw = useCallback(
    (options: PageOptions) => changeOverPages(course, { from, to, options }),
    [course, from, to],
  );
  return <PrintDialog title="The change-over on paper" sheet="change-over" draw={draw} close={close} />;
}
