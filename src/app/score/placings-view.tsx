import { useId } from 'react';
import { pointsText } from '../../core/score/card-table.ts';
import type { ScoreCard } from '../../core/score/score-card.ts';
import { type CardRow, placings } from '../../core/score/tally.ts';
import { scoreWords } from '../../words/score.ts';
import { CardFiles } from './card-files.tsx';
import type { CardStore } from './card-store.ts';
import { namesOf } from './entry-list.tsx';
import type { ScoreFrameProps } from './score-props.ts';

/** Places that several share, with their numbers. */
function tieWords(rows: readonly CardRow[]): readonly string[] {
  const tied = placings(rows).filter(({ isTied }) => isTied);
  const places = [...new Set(tied.map(({ place = 0 }) => place))];
  return places.map((place) => {
    const numbers = tied.filter((row) => row.place === place).map(({ entry }) => entry.number || scoreWords.unnumbered);
    return scoreWords.tieOf(place, numbers);
  });
}

function stateOf({ status, isTied, brokenBy, isBelow }: CardRow): string {
  const words = [
    ...(status === 'whole' ? [] : [scoreWords.statuses[status]]),
    ...(isTied ? [scoreWords.tied] : []),
    ...(brokenBy === undefined ? [] : [brokenBy === 'order' ? scoreWords.byOrder : scoreWords.byTime]),
    ...(isBelow ? [scoreWords.below] : []),
  ];
  return words.join(', ');
}

/** Who stands where so far, the ties, the files, and the list that is scored by. */
export function PlacingsView({
  card,
  rows,
  store,
  ...frame
}: ScoreFrameProps & { readonly card: ScoreCard; readonly rows: readonly CardRow[]; readonly store: CardStore }) {
  const judge = useId();
  const ties = tieWords(rows);
  const { scoring } = card;
  return (
    // It scrolls, and keys have to reach what is below.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region takes the focus so that keys can scroll it.
    <section className="score-body score-placings" aria-label={scoreWords.placings} tabIndex={0}>
      <div className="score-wide">
        <table>
          <thead>
            <tr>
              <th scope="col">{scoreWords.place}</th>
              <th scope="col">{scoreWords.number}</th>
              <th scope="col">{scoreWords.rider}</th>
              <th scope="col">{scoreWords.total}</th>
              <th scope="col">{scoreWords.state}</th>
            </tr>
          </thead>
          <tbody>
            {placings(rows).map((row) => (
              <tr key={row.entry.id}>
                <td>{row.place ?? '–'}</td>
                <th scope="row">{row.entry.number || scoreWords.unnumbered}</th>
                <td>{namesOf(row.entry)}</td>
                <td>{row.total === undefined ? '–' : pointsText(row.total)}</td>
                <td>
                  {stateOf(row)}
                  {(row.isTied || row.brokenBy === 'order') && <OrderField row={row} store={store} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p role="status">{ties.length === 0 ? scoreWords.noTies : scoreWords.tiesAre(ties)}</p>
      <p className="field-note">{scoreWords.judgeDecides}</p>
      {scoring.tie !== undefined && (
        <>
          <label className="score-tick">
            <input
              type="checkbox"
              checked={card.ties === 'time'}
              onChange={(event) => store.tap({ kind: 'ties', ties: event.target.checked ? 'time' : 'judge' })}
            />
            {scoreWords.timeDecides(scoring.tie.only)}
          </label>
          <p className="field-note">{scoring.tie.says}</p>
        </>
      )}
      <div className="field">
        <label htmlFor={judge}>{scoreWords.judgeName}</label>
        <input
          id={judge}
          value={card.judge}
          maxLength={200}
          autoComplete="off"
          onChange={(event) => store.tap({ kind: 'judge', judge: event.target.value })}
        />
      </div>
      <CardFiles {...frame} store={store} card={card} />
      <details className="score-more">
        <summary>{scoreWords.list}</summary>
        {scoring.about.map((text) => (
          <p key={text}>{text}</p>
        ))}
        <ul>
          {scoring.penalties.map(({ id, points, fault, source }) => (
            <li key={id}>{scoreWords.sourceOf(pointsText(points), fault, source)}</li>
          ))}
          {scoring.rulings.map(({ id, effect, fault, source }) => (
            <li key={id}>{scoreWords.sourceOf(scoreWords.statuses[effect], fault, source)}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}

function OrderField({ row: { entry }, store }: { readonly row: CardRow; readonly store: CardStore }) {
  return (
    <input
      className="score-order"
      aria-label={scoreWords.orderOf(entry.number || scoreWords.unnumbered)}
      inputMode="numeric"
      value={entry.order === undefined ? '' : String(entry.order)}
      onChange={({ target }) => {
        const order = Number(target.value);
        const isOrder = Number.isInteger(order) && order >= 1 && order <= 999;
        if (target.value.trim() === '') store.tap({ kind: 'order', entry: entry.id, order: null });
        else if (isOrder) store.tap({ kind: 'order', entry: entry.id, order });
      }}
    />
  );
}
