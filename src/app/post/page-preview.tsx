import { useMemo } from 'react';
import { sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';
import { PagePictures } from './page-pictures.tsx';

/** The sheet as it will be printed. */
export function PagePreview() {
  const view = useView();
  const survey = useDeskState((state) => state.survey);
  const ask = useViewState((state) => state.pageOptions);
  const sheet = sheetById(useViewState((state) => state.sheet));
  const drawn = useMemo(() => sheet.draw(survey, ask), [sheet, survey, ask]);
  if (drawn.kind === 'too-big') {
    return (
      <div className="preview">
        <div className="too-big" role="alert">
          <p>{drawn.why}</p>
          <button
            type="button"
            className="button primary"
            onClick={() => view.setPageOptions({ ...ask, scale: drawn.nearest })}
          >
            {postWords.drawAtScale(drawn.nearest)}
          </button>
        </div>
      </div>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
    <section className="preview" tabIndex={0} aria-label={postWords.previewOf(sheet.title.toLowerCase())}>
      <PagePictures drawn={drawn} />
    </section>
  );
}
