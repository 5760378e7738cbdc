import { useEffect, useMemo } from 'react';
import type { PageOptions } from '../../sheets/sheet.ts';
import { sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { useDeskState } from '../desk-context.tsx';
import type { SheetQuestion } from './drawn-sheet.ts';
import { ExportBar } from './export-bar.tsx';
import { ExportStatus } from './export-status.tsx';
import { PageBar } from './page-bar.tsx';
import { PageNotices } from './page-notices.tsx';
import { PageView } from './page-view.tsx';
import { pageOptionsOf, posting, usePostingState } from './posting.ts';
import { offerToPrint } from './print-pages.ts';
import { useDrawnSheet } from './sheet-drawer.ts';

/** The shown sheet as it will be printed, and what makes files of it. */
export function PagePreview() {
  const course = useDeskState((state) => state.course);
  const settings = usePostingState((state) => state);
  const { sheet } = settings;
  const asked = JSON.stringify(pageOptionsOf(settings, sheet));
  const question = useMemo((): SheetQuestion => {
    return { course, sheet, options: JSON.parse(asked) as PageOptions };
  }, [course, sheet, asked]);
  const { shown, isBusy, failure, tryAgain } = useDrawnSheet(question);
  const last = shown?.drawn;
  const pages = last?.kind === 'drawn' ? last.pages : [];
  const printed = last?.kind === 'drawn' && !isBusy ? last : null;
  useEffect(() => offerToPrint(printed?.pages ?? []), [printed]);
  const title = postWords.previewOf(sheetById(sheet).title.toLowerCase());
  return (
    <div className="posting">
      <PageNotices drawn={last} />
      <div className="page-place">
        <PageView pages={pages} isOld={isBusy} title={title} />
        {last?.kind === 'too-big' && (
          <div className="too-big" role="alert">
            <p>{last.why}</p>
            <button type="button" className="button primary" onClick={() => posting.setScale(sheet, last.nearest)}>
              {postWords.drawAtScale(last.nearest)}
            </button>
          </div>
        )}
        {failure !== null && (
          <div className="too-big" role="alert">
            <p>{postWords.notDrawn(failure)}</p>
            <button type="button" className="button primary" onClick={tryAgain}>
              {postWords.tryAgain}
            </button>
          </div>
        )}
        {isBusy && <p className="page-waits">{postWords.drawing}</p>}
      </div>
      <ExportStatus />
      <div className="post-bar" data-pane="bar">
        <PageBar pages={pages} />
        <ExportBar pages={printed?.pages ?? []} />
      </div>
    </div>
  );
}
