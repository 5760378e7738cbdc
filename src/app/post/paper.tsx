import { PAPER_NAMES, type PageOptions, type Paper } from '../../sheets/sheet.ts';
import { SHEETS, sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { useView, useViewState } from '../view.ts';
import { ExportButton } from './export-button.tsx';

const TITLES = Object.fromEntries(SHEETS.map(({ id, title }) => [id, title]));
const ORIENTATIONS: Readonly<Record<PageOptions['orientation'], string>> = {
  fit: postWords.bestFit,
  portrait: postWords.portrait,
  landscape: postWords.landscape,
};
const SCALES: Readonly<Record<string, string>> = {
  fit: postWords.largest,
  ...Object.fromEntries([100, 150, 200, 250, 300, 400, 500].map((each) => [String(each), `1:${each}`])),
};

/** The paper, and the file. */
export function PaperPanel() {
  const view = useView();
  const ask = useViewState((state) => state.pageOptions);
  const sheet = useViewState((state) => state.sheet);
  const survey = useDeskState((state) => state.survey);
  const isEmpty = survey.layout.ride.legs.length === 0;
  const scale = (text: string) => {
    const { scale: _, ...rest } = ask;
    view.setPageOptions(text === 'fit' ? rest : { ...rest, scale: Number(text) });
  };
  const scales = ask.scale === undefined ? SCALES : { ...SCALES, [String(ask.scale)]: `1:${ask.scale}` };
  return (
    <div className="inspector">
      <ChoiceField label={postWords.sheet} value={sheet} options={TITLES} choose={view.showSheet} />
      <div className="fields">
        <ChoiceField
          label={postWords.paper}
          value={ask.paper}
          options={PAPER_NAMES}
          choose={(paper) => view.setPageOptions({ ...ask, paper: paper as Paper })}
        />
        <ChoiceField
          label={postWords.page}
          value={ask.orientation}
          options={ORIENTATIONS}
          choose={(orientation) =>
            view.setPageOptions({ ...ask, orientation: orientation as PageOptions['orientation'] })
          }
        />
        <ChoiceField label={postWords.scale} value={String(ask.scale ?? 'fit')} options={scales} choose={scale} />
      </div>
      <ExportButton key={sheet} sheet={sheet} draw={() => sheetById(sheet).draw(survey, ask)} />
      {isEmpty && <p className="caution">{postWords.nothingRidden}</p>}
    </div>
  );
}
