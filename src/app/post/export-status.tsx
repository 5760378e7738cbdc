import { X } from 'lucide-react';
import { postWords } from '../../words/post.ts';
import { terms } from '../../words/terms.ts';
import type { ExportedOrder } from './export-order.ts';
import { share } from './export-verbs.ts';
import { type ExportState, exporter, useExportState } from './exporter.ts';
import { posting, usePostingState } from './posting.ts';

/** How far the export is, with a way to stop it, or what came of it. */
export function ExportStatus() {
  const state = useExportState();
  const waiting = usePostingState(({ shareable }) => shareable);
  const isFault = state.kind === 'failed' || (state.kind === 'done' && state.result.kind !== 'exported');
  return (
    <div className={`export-status is-${state.kind}`}>
      <p role="status" className={isFault ? 'refusal' : 'small'}>
        {sentenceOf(state)}
      </p>
      {state.kind === 'busy' && (
        <>
          <progress max={state.of} value={state.done} aria-label={postWords.progress} />
          <button type="button" className="button" onClick={exporter.giveUp}>
            {postWords.cancel}
          </button>
        </>
      )}
      {state.kind === 'done' && waiting !== null && waiting.order === state.order && (
        <button
          type="button"
          className="button primary"
          onClick={() => void share(waiting.file).then((isDone) => isDone && posting.keepShareable(null))}
        >
          {postWords.shareNow}
        </button>
      )}
      {state.kind !== 'busy' && state.kind !== 'rest' && (
        <button
          type="button"
          className="quiet"
          aria-label={postWords.dismiss}
          title={postWords.dismiss}
          onClick={exporter.clear}
        >
          <X aria-hidden="true" />
        </button>
      )}
    </div>
  );
}

function sentenceOf(state: ExportState): string {
  switch (state.kind) {
    case 'rest':
      return '';
    case 'busy':
      return state.of > 1 ? postWords.writingOf(Math.min(state.done + 1, state.of), state.of) : postWords.writing;
    case 'given-up':
      return postWords.givenUp;
    case 'failed':
      return postWords.exportFailed(state.why);
    case 'done':
      if (state.result.kind === 'refused') return state.result.why;
      // The notices of the sheet that is shown stand over it.
      return [writtenWords(state.result), ...(state.order.sheets.length > 1 ? state.result.notices : [])].join(' ');
  }
}

function writtenWords({ file: { name }, count, pages, scale }: ExportedOrder): string {
  if (count > 1) return postWords.exportedPack(name, count, terms.pages(pages));
  if (pages === 0) return postWords.exportedFile(name);
  return scale === null ? `${name}, ${terms.pages(pages)}.` : postWords.exported(name, terms.pages(pages), scale);
}
