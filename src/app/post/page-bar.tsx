import { ChevronLeft, ChevronRight, Minus, Plus } from 'lucide-react';
import { postWords } from '../../words/post.ts';
import type { PagePicture } from './drawn-sheet.ts';
import { ZOOM_STEPS, type Zoom } from './page-zoom.ts';
import { posting, usePostingState } from './posting.ts';
import { usePageTurn } from './use-page-turn.ts';

/** Turns and zooms the pages by buttons. */
export function PageBar({ pages }: { readonly pages: readonly PagePicture[] }) {
  const { page, turn } = usePageTurn(pages);
  return (
    <>
      {pages.length > 1 && (
        <fieldset className="page-turns">
          <legend className="visually-hidden">{postWords.pages}</legend>
          <button
            type="button"
            className="quiet"
            aria-disabled={page === 0}
            aria-label={postWords.pageBefore}
            title={postWords.pageBefore}
            onClick={() => turn(-1)}
          >
            <ChevronLeft aria-hidden="true" />
          </button>
          <span>{postWords.pageOf(page + 1, pages.length)}</span>
          <button
            type="button"
            className="quiet"
            aria-disabled={page === pages.length - 1}
            aria-label={postWords.nextPage}
            title={postWords.nextPage}
            onClick={() => turn(1)}
          >
            <ChevronRight aria-hidden="true" />
          </button>
        </fieldset>
      )}
      <ZoomButtons />
    </>
  );
}

function ZoomButtons() {
  const zoom = usePostingState((state) => state.zoom);
  const steps: readonly number[] = ZOOM_STEPS;
  const isOther = typeof zoom === 'number' && !steps.includes(zoom);
  return (
    <fieldset className="page-zoom">
      <legend className="visually-hidden">{postWords.zoom}</legend>
      <button
        type="button"
        className="quiet"
        aria-label={postWords.zoomOut}
        title={postWords.zoomOut}
        onClick={() => posting.stepZoom(-1)}
      >
        <Minus aria-hidden="true" />
      </button>
      <select
        aria-label={postWords.zoom}
        value={String(zoom)}
        onChange={(event) => posting.setZoom(zoomFrom(event.target.value))}
      >
        <option value="page">{postWords.fitPage}</option>
        <option value="width">{postWords.fitWidth}</option>
        {isOther && <option value={String(zoom)}>{percent(zoom)}</option>}
        {steps.map((step) => (
          <option key={step} value={String(step)}>
            {percent(step)}
          </option>
        ))}
      </select>
      <button
        type="button"
        className="quiet"
        aria-label={postWords.zoomIn}
        title={postWords.zoomIn}
        onClick={() => posting.stepZoom(1)}
      >
        <Plus aria-hidden="true" />
      </button>
    </fieldset>
  );
}

function zoomFrom(text: string): Zoom {
  return text === 'page' || text === 'width' ? text : Number(text);
}

function percent(zoom: number): string {
  return `${Math.round(100 * zoom)} %`;
}
