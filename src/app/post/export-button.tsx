import { FileDown } from 'lucide-react';
import { useState } from 'react';
import type { Pages, TooBig } from '../../sheets/sheet.ts';
import { postWords } from '../../words/post.ts';
import { useDeskState } from '../desk-context.tsx';
import { exportPages } from './export.ts';

/** Writes a sheet as a PDF, and says what was written or why it could not be. */
export function ExportButton({ sheet, draw }: { readonly sheet: string; draw(): Pages | TooBig }) {
  const title = useDeskState((state) => state.course.title);
  const [state, setState] = useState<{ readonly kind: 'rest' | 'busy' | 'done' | 'failed'; readonly says: string }>({
    kind: 'rest',
    says: '',
  });
  const save = async () => {
    if (state.kind === 'busy') return;
    setState({ kind: 'busy', says: postWords.drawingThePdf });
    try {
      const drawn = draw();
      const says = drawn.kind === 'too-big' ? drawn.why : await exportPages(drawn, { course: title, sheet });
      setState({ kind: 'done', says });
    } catch (failure) {
      const why = failure instanceof Error ? failure.message : String(failure);
      setState({ kind: 'failed', says: postWords.pdfFailed(why) });
    }
  };
  return (
    <>
      <button
        type="button"
        className="button primary large"
        // A button that is switched off would lose the focus.
        aria-disabled={state.kind === 'busy'}
        onClick={() => void save()}
      >
        <FileDown aria-hidden="true" />
        {postWords.exportPdf}
      </button>
      <p role="status" className={state.kind === 'failed' ? 'refusal' : 'small'}>
        {state.says}
      </p>
    </>
  );
}
