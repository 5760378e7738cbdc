import { type KeyboardEvent, useMemo } from 'react';
import { sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { keyPressOf } from '../key-press.ts';
import { useView, useViewState } from '../view.ts';
import { PagePictures } from './page-pictures.tsx';

/** The sheet as it will be printed. */
export function PagePreview() {
  const desk = useDesk();
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
  const pressed = (event: KeyboardEvent) => {
    // The page stands where the arena does: the keys of the stages go on from here too.
    if (/^[1-5]$/.test(event.key) && desk.press(keyPressOf(event))) event.preventDefault();
  };
  return (
    <section
      className="preview"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
      tabIndex={0}
      data-pane="arena"
      aria-label={postWords.previewOf(sheet.title.toLowerCase())}
      onKeyDown={pressed}
    >
      <PagePictures drawn={drawn} />
    </section>
  );
}
