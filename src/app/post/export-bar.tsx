import { ChevronUp, FileDown } from 'lucide-react';
import { useId, useState } from 'react';
import { postWords } from '../../words/post.ts';
import { useDesk } from '../desk-context.tsx';
import { LinkDialog } from '../link/link-dialog.tsx';
import type { PagePicture } from './drawn-sheet.ts';
import { ExportMenu } from './export-menu.tsx';
import type { ExportOrder } from './export-order.ts';
import { saveOrder } from './export-verbs.ts';
import { useExportState } from './exporter.ts';
import { pageOptionsOf, posting } from './posting.ts';

/** Makes files of what is shown: the PDF of the sheet by one press, all else from a menu. */
export function ExportBar({ pages }: { readonly pages: readonly PagePicture[] }) {
  const desk = useDesk();
  const menu = useId();
  const [isLinking, setLinking] = useState(false);
  const isBusy = useExportState().kind === 'busy';
  const orderPdf = (): ExportOrder => {
    const settings = posting.state();
    const { sheet, dpi } = settings;
    const sheets = [{ sheet, options: pageOptionsOf(settings, sheet) }] as const;
    return { course: desk.state().course, format: 'pdf', sheets, dpi };
  };
  return (
    <div className="export-buttons">
      <button
        type="button"
        className="button primary"
        // A button that is switched off would lose the focus.
        aria-disabled={isBusy}
        onClick={() => void saveOrder(orderPdf())}
      >
        <FileDown aria-hidden="true" />
        {postWords.exportPdf}
      </button>
      <button
        type="button"
        className="button primary"
        popoverTarget={menu}
        aria-label={postWords.moreExports}
        title={postWords.moreExports}
      >
        <ChevronUp aria-hidden="true" />
      </button>
      <ExportMenu id={menu} pages={pages} openLink={() => setLinking(true)} />
      {isLinking && <LinkDialog close={() => setLinking(false)} />}
    </div>
  );
}
