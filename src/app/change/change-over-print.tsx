import { useCallback } from 'react';
import type { ChangeOver } from '../../core/change/change-over.ts';
import { changeOverPages } from '../../sheets/change-over.ts';
import type { PageOptions } from '../../sheets/sheet.ts';
import { changeWords } from '../../words/change.ts';
import { PrintDialog } from '../post/print-dialog.tsx';
import type { ChangeOverQuestion } from './plan-questions.ts';

/** The crew's sheet of a change-over. */
export function ChangeOverPrint({
  plan,
  of,
  close,
}: {
  readonly plan: ChangeOver;
  readonly of: ChangeOverQuestion;
  close(): void;
}) {
  const draw = useCallback((options: PageOptions) => changeOverPages(of.course, { ...of, plan, options }), [of, plan]);
  return <PrintDialog title={changeWords.onPaper} sheet="change-over" draw={draw} close={close} />;
}
