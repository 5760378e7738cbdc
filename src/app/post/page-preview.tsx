import { useMemo } from 'react';
import { pattern } from '../../sheets/pattern.ts';
import { svg } from '../../sheets/svg.ts';
import { useDeskState } from '../desk-context.tsx';
import { useView, useViewState } from '../view.ts';

/** The pattern as it will lie on the notice board. */
export function PagePreview() {
  const view = useView();
  const survey = useDeskState((state) => state.survey);
  const ask = useViewState((state) => state.ask);
  const drawn = useMemo(() => pattern.draw(survey, ask), [survey, ask]);
  if (drawn.kind === 'too-big') {
    return (
      <div className="preview">
        <div className="too-big" role="alert">
          <p>{drawn.why}</p>
          <button type="button" className="button primary" onClick={() => view.print({ ...ask, scale: drawn.nearest })}>
            Draw it at 1:{drawn.nearest}
          </button>
        </div>
      </div>
    );
  }
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys.
    <section className="preview" tabIndex={0} aria-label="Preview of the pattern">
      {drawn.mends.map((mend) => (
        <p key={mend} className="caution">
          {mend}
        </p>
      ))}
      {drawn.pages.map((page, index) => (
        <img
          // biome-ignore lint/suspicious/noArrayIndexKey: pages are known by their place.
          key={index}
          className={page.width > page.height ? 'page lying' : 'page'}
          style={{ aspectRatio: `${page.width} / ${page.height}` }}
          src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg(page))}`}
          alt={page.about}
        />
      ))}
    </section>
  );
}
