import { type FormEvent, useId, useState } from 'react';
import { pointsText } from '../../core/score/card-table.ts';
import type { CardRow } from '../../core/score/tally.ts';
import { scoreWords } from '../../words/score.ts';
import type { CardStore } from './card-store.ts';

/** The rider's and the horse's name, as far as they are known. */
export function namesOf({ rider, horse }: CardRow['entry']): string {
  return rider !== '' && horse !== '' ? scoreWords.onHorse(rider, horse) : rider || horse;
}

/** "70½, place 2"; what else there is to say where there is no total. */
function standing({ status, total, place, isTied }: CardRow): string {
  if (status === 'begun' && total !== undefined) return scoreWords.totalSoFar(pointsText(total));
  if (status !== 'whole' || total === undefined) return scoreWords.statuses[status];
  const at = place === undefined ? '' : ` · ${place}.`;
  return `${pointsText(total)}${at}${isTied ? ` ${scoreWords.tied}` : ''}`;
}

/** Who rides, in the order of go, and a field for numbers as they come. */
export function EntryList({
  rows,
  store,
  chosen,
  choose,
}: {
  readonly rows: readonly CardRow[];
  readonly store: CardStore;
  readonly chosen: string;
  choose(entry: string): void;
}) {
  return (
    <nav className="score-entries" aria-label={scoreWords.entries}>
      <ol>
        {rows.map((row) => {
          const { id, number } = row.entry;
          return (
            <li key={id}>
              <button
                type="button"
                className="score-entry"
                aria-current={id === chosen}
                data-status={row.status}
                onClick={() => choose(id)}
              >
                <b>{number === '' ? scoreWords.unnumbered : number}</b>
                <span>{namesOf(row.entry)}</span>
                <small>{standing(row)}</small>
              </button>
            </li>
          );
        })}
      </ol>
      <AddEntry rows={rows} store={store} choose={choose} />
    </nav>
  );
}

/** An id that no entry has: they are counted on. */
function freshId(rows: readonly CardRow[]): string {
  const taken = new Set(rows.map(({ entry }) => entry.id));
  let count = rows.length + 1;
  while (taken.has(`typed-${count}`)) count += 1;
  return `typed-${count}`;
}

function AddEntry({
  rows,
  store,
  choose,
}: {
  readonly rows: readonly CardRow[];
  readonly store: CardStore;
  choose(entry: string): void;
}) {
  const field = useId();
  const [number, setNumber] = useState('');
  const [refusal, setRefusal] = useState('');
  const add = (event: FormEvent) => {
    event.preventDefault();
    const typed = number.trim();
    if (typed === '') return;
    const known = rows.find(({ entry }) => entry.number === typed);
    if (known !== undefined) {
      setRefusal(scoreWords.numberTaken(typed));
      return;
    }
    const entry = freshId(rows);
    store.tap({ kind: 'enter', entry, number: typed });
    setNumber('');
    setRefusal('');
    choose(entry);
  };
  return (
    <form className="score-add field" onSubmit={add}>
      <label htmlFor={field}>{scoreWords.addEntry}</label>
      <div>
        <input
          id={field}
          value={number}
          maxLength={20}
          autoComplete="off"
          data-first={rows.length === 0 ? '' : undefined}
          onChange={(event) => setNumber(event.target.value)}
        />
        <button type="submit" className="button">
          {scoreWords.addNumber}
        </button>
      </div>
      <p role="status" className="refusal">
        {refusal}
      </p>
    </form>
  );
}
