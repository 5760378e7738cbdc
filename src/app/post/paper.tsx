import { chosenOf, PAPER_NAMES, type PageOptions, type Paper, type SheetOption } from '../../sheets/sheet.ts';
import { SHEETS, sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { ChoiceField } from '../set/choice-field.tsx';
import { pageOptionsOf, posting, usePostingState } from './posting.ts';
import { useHasDrawing } from './sheet-drawer.ts';

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

/** Which sheet, on which paper, and what it has to choose. */
export function PaperPanel() {
  const settings = usePostingState((state) => state);
  const { sheet, paper, orientation } = settings;
  const ask = pageOptionsOf(settings, sheet);
  const hasDrawing = useHasDrawing(sheet);
  const scales = ask.scale === undefined ? SCALES : { ...SCALES, [String(ask.scale)]: `1:${ask.scale}` };
  return (
    <div className="inspector">
      <ChoiceField label={postWords.sheet} value={sheet} options={TITLES} choose={posting.showSheet} />
      <div className="fields">
        <ChoiceField
          label={postWords.paper}
          value={paper}
          options={PAPER_NAMES}
          choose={(chosen) => posting.setPaper(chosen as Paper)}
        />
        {hasDrawing && (
          <>
            <ChoiceField
              label={postWords.page}
              value={orientation}
              options={ORIENTATIONS}
              choose={(chosen) => posting.setOrientation(chosen as PageOptions['orientation'])}
            />
            <ChoiceField
              label={postWords.scale}
              value={String(ask.scale ?? 'fit')}
              options={scales}
              choose={(text) => posting.setScale(sheet, text === 'fit' ? undefined : Number(text))}
            />
          </>
        )}
        {(sheetById(sheet).options ?? []).map((option) => (
          <ChoiceField
            key={option.id}
            label={option.title}
            value={chosenOf(option, ask)}
            options={choicesOf(option)}
            choose={(choice) => posting.choose(sheet, option.id, choice)}
          />
        ))}
      </div>
    </div>
  );
}

function choicesOf({ choices }: SheetOption): Readonly<Record<string, string>> {
  return Object.fromEntries(choices.map(({ id, title }) => [id, title]));
}
