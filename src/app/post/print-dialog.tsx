import { useMemo, useState } from 'react';
import { PAPER_NAMES, type PageOptions, type Pages, type Paper, type TooBig } from '../../sheets/sheet.ts';
import { postWords } from '../../words/post.ts';
import { Dialog } from '../dialog.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { ExportButton } from './export-button.tsx';
import { PagePictures } from './page-pictures.tsx';
import { posting, usePostingState } from './posting.ts';

/** A sheet about layouts or the day: the paper, its pages, and the file. `draw` must be stable while nothing changes. */
export function PrintDialog({
  title,
  sheet,
  draw,
  close,
}: {
  readonly title: string;
  /** Ends the file's name: `comparison`. */
  readonly sheet: string;
  draw(options: PageOptions): Pages | TooBig;
  close(): void;
}) {
  const paper = usePostingState((state) => state.paper);
  const [options, setOptions] = useState<PageOptions>({ paper, orientation: 'fit' });
  const drawn = useMemo(() => draw(options), [draw, options]);
  const choosePaper = (chosen: string) => {
    setOptions({ ...options, paper: chosen as Paper });
    posting.setPaper(chosen as Paper);
  };
  return (
    <Dialog wide hasVerb title={title} close={close}>
      <div className="print">
        <div className="fields">
          <ChoiceField label={postWords.paper} value={options.paper} options={PAPER_NAMES} choose={choosePaper} />
        </div>
        <ExportButton sheet={sheet} draw={() => drawn} />
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls must be reachable by keys. */}
        <section className="print-pages" tabIndex={0} aria-label={postWords.preview(title)}>
          {drawn.kind === 'too-big' ? <p className="refusal">{drawn.why}</p> : <PagePictures drawn={drawn} />}
        </section>
      </div>
    </Dialog>
  );
}
