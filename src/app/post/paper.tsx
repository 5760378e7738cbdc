import { chosenOf, PAPER_NAMES, type PageOptions, type Paper } from '../../sheets/sheet.ts';
import { SHEETS, sheetById } from '../../sheets/sheets.ts';
import { postWords } from '../../words/post.ts';
import { ChoiceField } from '../set/choice-field.tsx';
import { pageOptionsOf, posting, usePostingState } from './posting.ts';
import { useHasDrawing } from './sheet-drawer.ts';

const TITLES = Object.fromEntries(SHEETS.map(({ id, title }) => [id, title]));
/** Letters of a choice that fit into half of a panel. */
const SHORT = 14;
const ORIENTATIONS: Readonly<Record<PageOptions['orientation'], string>> = {
  fit: postWords.bestFit,
  portrait: postWords.portrait,
  landscape: postWords.landscape,
};
const SCALES = [100, 150, 200, 250, 300, 400, 500];

/** Which sheet, on which paper, and what it has to choose. */
export function PaperPanel() {
  const settings = usePostingState((state) => state);
  const { sheet, paper, orientation } = settings;
  const ask = pageOptionsOf(settings, sheet);
  const hasDrawing = useHasDrawing(sheet);
  const scales = ask.scale === undefined ? SCALES : [...new Set([...SCALES, ask.scale])].sort((a, b) => a - b);
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
              options={[['fit', postWords.largest], ...scales.map((each) => [String(each), `1:${each}`] as const)]}
              choose={(text) => posting.setScale(sheet, text === 'fit' ? undefined : Number(text))}
            />
          </>
        )}
        {(sheetById(sheet).options ?? []).map((option) => (
          <ChoiceField
            key={option.id}
            label={option.title}
            wide={option.choices.some(({ title }) => title.length > SHORT)}
            value={chosenOf(option, ask)}
            options={option.choices.map(({ id, title }) => [id, title] as const)}
            choose={(choice) => posting.choose(sheet, option.id, choice)}
          />
        ))}
      </div>
    </div>
  );
}
