import { useId, useState } from 'react';
import type { CardEntry, ScoreCard } from '../../core/score/score-card.ts';
import type { CardRow } from '../../core/score/tally.ts';
import type { Tap } from '../../core/score/taps.ts';
import { scoreWords } from '../../words/score.ts';

/** What is about the whole go: what ends it, its time, a note, the number, and whether it is ridden at all. */
export function WholeGo({
  card,
  entry,
  rows,
  tap,
}: {
  readonly card: ScoreCard;
  readonly entry: CardEntry;
  readonly rows: readonly CardRow[];
  tap(tap: Tap): void;
}) {
  const fields = { ruling: useId(), note: useId(), number: useId() };
  const { id } = entry;
  return (
    <fieldset className="score-go">
      <legend>{scoreWords.wholeGo}</legend>
      <div className="field wide">
        <label htmlFor={fields.ruling}>{scoreWords.endsTheGo}</label>
        <select
          id={fields.ruling}
          value={entry.ruling ?? ''}
          onChange={({ target }) => tap({ kind: 'rule', entry: id, ruling: target.value === '' ? null : target.value })}
        >
          <option value="">{scoreWords.nothingEnds}</option>
          {card.scoring.rulings.map(({ id: ruling, effect, fault }) => (
            <option key={ruling} value={ruling}>
              {effect === 'zero-score' ? scoreWords.zeroFor(fault) : scoreWords.disqualifiedFor(fault)}
            </option>
          ))}
        </select>
      </div>
      {card.scoring.tie !== undefined && <TimeField entry={entry} tap={tap} />}
      <div className="field">
        <label htmlFor={fields.note}>{scoreWords.noteOfGo}</label>
        <input
          id={fields.note}
          value={entry.note ?? ''}
          maxLength={500}
          onChange={(event) => tap({ kind: 'note', entry: id, note: event.target.value })}
        />
      </div>
      {id.startsWith('typed-') && <NumberField id={fields.number} entry={entry} rows={rows} tap={tap} />}
      <label className="score-tick">
        <input
          type="checkbox"
          checked={entry.scratched === true}
          onChange={(event) => tap({ kind: 'scratch', entry: id, scratched: event.target.checked })}
        />
        {scoreWords.doesNotRide}
      </label>
    </fieldset>
  );
}

function TimeField({ entry, tap }: { readonly entry: CardEntry; tap(tap: Tap): void }) {
  const field = useId();
  const [typed, setTyped] = useState(entry.time === undefined ? '' : String(entry.time));
  const time = Number(typed.replace(',', '.'));
  const isWrong = typed.trim() !== '' && !(Number.isFinite(time) && time >= 0);
  const send = (text: string) => {
    setTyped(text);
    const seconds = Number(text.replace(',', '.'));
    if (text.trim() === '') tap({ kind: 'time', entry: entry.id, time: null });
    else if (Number.isFinite(seconds) && seconds >= 0) tap({ kind: 'time', entry: entry.id, time: seconds });
  };
  return (
    <div className="field">
      <label htmlFor={field}>{scoreWords.time}</label>
      <input
        id={field}
        value={typed}
        inputMode="decimal"
        aria-invalid={isWrong}
        onChange={(event) => send(event.target.value)}
      />
      {isWrong && (
        <p className="refusal" role="alert">
          {scoreWords.timeRefused}
        </p>
      )}
    </div>
  );
}

/** A number that was typed here can be corrected here; those of the class are corrected there. */
function NumberField({
  id,
  entry,
  rows,
  tap,
}: {
  readonly id: string;
  readonly entry: CardEntry;
  readonly rows: readonly CardRow[];
  tap(tap: Tap): void;
}) {
  const [typed, setTyped] = useState(entry.number);
  const isTaken = rows.some((other) => other.entry.id !== entry.id && other.entry.number === typed.trim());
  const send = (text: string) => {
    setTyped(text);
    const number = text.trim();
    const isFree = !rows.some((other) => other.entry.id !== entry.id && other.entry.number === number);
    if (number !== '' && isFree) tap({ kind: 'enter', entry: entry.id, number });
  };
  return (
    <div className="field">
      <label htmlFor={id}>{scoreWords.correctNumber}</label>
      <input
        id={id}
        value={typed}
        maxLength={20}
        aria-invalid={isTaken}
        onChange={(event) => send(event.target.value)}
      />
      {isTaken && (
        <p className="refusal" role="alert">
          {scoreWords.numberTaken(typed.trim())}
        </p>
      )}
    </div>
  );
}
