import { csvFormatRows } from 'd3-dsv';
import { FileDown, FileText, FolderOpen, Trash2 } from 'lucide-react';
import { type ChangeEvent, useRef, useState } from 'react';
import { cardTable } from '../../core/score/card-table.ts';
import { cardText, readCard } from '../../core/score/read-card.ts';
import type { ScoreCard } from '../../core/score/score-card.ts';
import { sheetFileName } from '../../core/text/file-name.ts';
import { scoreWords } from '../../words/score.ts';
import { saveDownload } from '../file/download.ts';
import type { CardStore } from './card-store.ts';
import type { ScoreFrameProps } from './score-props.ts';

/** Spreadsheets take a text for UTF-8 where it begins with this mark. */
const MARK = '\uFEFF';

/** The card as files, another card in its place, and a fresh one. */
export function CardFiles({
  file,
  card,
  store,
  clear,
}: Pick<ScoreFrameProps, 'file' | 'clear'> & { readonly card: ScoreCard; readonly store: CardStore }) {
  const field = useRef<HTMLInputElement>(null);
  const [says, setSays] = useState('');
  const [isAsked, setAsked] = useState(false);
  const save = (ending: 'csv' | 'json', type: string, text: string) => {
    const name = sheetFileName(file, 'score', ending);
    saveDownload(new Blob([text], { type }), name);
    setSays(scoreWords.saved(name));
  };
  const open = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const [chosen] = target.files ?? [];
    if (chosen === undefined) return;
    const read = readCard(await chosen.text());
    // The same file may be chosen again.
    target.value = '';
    if (read.kind === 'read') store.replace(read.card);
    setSays(read.kind === 'read' ? scoreWords.opened(chosen.name) : scoreWords.cardRefused(read.why));
  };
  return (
    <div className="score-files">
      <h3>{scoreWords.files}</h3>
      <div className="button-row">
        <button
          type="button"
          className="button"
          onClick={() => save('csv', 'text/csv', `${MARK}${csvFormatRows(cardTable(card).map((row) => [...row]))}\r\n`)}
        >
          <FileText aria-hidden="true" />
          {scoreWords.exportCsv}
        </button>
        <button type="button" className="button" onClick={() => save('json', 'application/json', cardText(card))}>
          <FileDown aria-hidden="true" />
          {scoreWords.saveJson}
        </button>
        <button type="button" className="button" onClick={() => field.current?.click()}>
          <FolderOpen aria-hidden="true" />
          {scoreWords.openJson}
        </button>
        <input ref={field} type="file" accept=".json,application/json" hidden onChange={(event) => void open(event)} />
        {!isAsked && (
          <button type="button" className="button" onClick={() => setAsked(true)}>
            <Trash2 aria-hidden="true" />
            {scoreWords.clear}
          </button>
        )}
      </div>
      {isAsked && (
        <div className="notice">
          <p>{scoreWords.clearAsk}</p>
          <button
            type="button"
            className="button"
            onClick={() => {
              clear();
              setAsked(false);
            }}
          >
            {scoreWords.clearSure}
          </button>
          <button type="button" className="button" onClick={() => setAsked(false)}>
            {scoreWords.keep}
          </button>
        </div>
      )}
      <p role="status">{says}</p>
    </div>
  );
}
