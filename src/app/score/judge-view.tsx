import { ArrowLeft, ArrowRight } from 'lucide-react';
import { useLayoutEffect, useRef } from 'react';
import { pointsText } from '../../core/score/card-table.ts';
import type { CardColumn, ScoreCard } from '../../core/score/score-card.ts';
import type { CardRow } from '../../core/score/tally.ts';
import { scoreWords } from '../../words/score.ts';
import type { CardStore } from './card-store.ts';
import { namesOf } from './entry-list.tsx';
import { entryAside, type JudgedPlace, placeAside } from './judge-keys.ts';
import { PenaltyPad, ScorePad, StrikeField } from './obstacle-pads.tsx';
import { WholeGo } from './whole-go.tsx';

/** What an entry was given at an obstacle. */
function givenAt(card: ScoreCard, { entry }: CardRow, leg: string): { readonly score: string; readonly less: string } {
  const cell = entry.cells[leg];
  const cost = new Map(card.scoring.penalties.map(({ id, points }) => [id, points]));
  const less = (cell?.penalties ?? []).reduce((sum, id) => sum + (cost.get(id) ?? 0), 0);
  const score = cell?.score;
  return {
    score: score === undefined ? '' : score === 'none' ? scoreWords.noScore : pointsText(score, 'plus'),
    less: less === 0 ? '' : pointsText(-less),
  };
}

/** One entry, obstacle by obstacle. */
export function JudgeView({
  card,
  rows,
  row,
  column,
  store,
  go,
}: {
  readonly card: ScoreCard;
  readonly rows: readonly CardRow[];
  readonly row: CardRow | undefined;
  readonly column: CardColumn | undefined;
  readonly store: CardStore;
  go(place: JudgedPlace): void;
}) {
  const body = useRef<HTMLElement>(null);
  const at = `${row?.entry.id} ${column?.leg}`;
  const shown = useRef(at);
  // Another obstacle begins at its scores, wherever the last one was left.
  useLayoutEffect(() => {
    if (shown.current !== at) body.current?.scrollTo(0, 0);
    shown.current = at;
  }, [at]);
  if (column === undefined) return <p className="score-body empty">{scoreWords.noObstacles}</p>;
  if (row === undefined) return <p className="score-body empty">{scoreWords.noEntries}</p>;
  const { entry, scores, penalties, total, missing } = row;
  const place: JudgedPlace = { entry: entry.id, leg: column.leg };
  const name = entry.number === '' ? scoreWords.unnumbered : entry.number;
  const before = placeAside(card, place, -1);
  const after = placeAside(card, place, 1);
  const onwards = after ?? entryAside(card, place, 1);
  return (
    <>
      <section ref={body} className="score-body" aria-label={scoreWords.judge}>
        <header className="score-who">
          <h3>
            {name} <small className="score-names">{namesOf(entry)}</small>
          </h3>
          <p role="status">
            {scoreWords.sums(
              pointsText(scores, 'plus'),
              pointsText(-penalties),
              total === undefined ? scoreWords.noTotal : pointsText(total),
            )}
            {row.status === 'begun' && ` · ${scoreWords.toGo(missing.length)}`}
            {row.status !== 'begun' && ` · ${scoreWords.statuses[row.status]}`}
          </p>
        </header>
        <ol className="score-obstacles" aria-label={scoreWords.obstacles}>
          {card.columns.map((each) => {
            const { score, less } = givenAt(card, row, each.leg);
            const isOpen = score === '' && each.struck === undefined;
            return (
              <li key={each.leg}>
                <button
                  type="button"
                  aria-current={each === column ? 'step' : undefined}
                  aria-label={`${scoreWords.obstacle(each.number, each.name)}: ${
                    isOpen && less === '' ? scoreWords.notGiven : scoreWords.given(score || '0', less || '0')
                  }`}
                  className={isOpen ? 'is-open' : ''}
                  onClick={() => go({ ...place, leg: each.leg })}
                >
                  <b aria-hidden="true">{each.number}</b>
                  <span aria-hidden="true">{each.struck === undefined ? score || '–' : '×'}</span>
                  <span aria-hidden="true" className="score-cost">
                    {less}
                  </span>
                </button>
              </li>
            );
          })}
        </ol>
        <h4>{scoreWords.obstacle(column.number, column.name)}</h4>
        {column.struck !== undefined && <p className="field-note">{scoreWords.struck(column.struck)}</p>}
        <ScorePad card={card} entry={entry} leg={column.leg} tap={store.tap} />
        <PenaltyPad card={card} entry={entry} leg={column.leg} tap={store.tap} />
        <StrikeField key={column.leg} column={column} tap={store.tap} />
        <WholeGo key={entry.id} card={card} entry={entry} rows={rows} tap={store.tap} />
        <p className="field-note score-keys">{scoreWords.keys}</p>
      </section>
      <div className="score-steer">
        <button type="button" aria-disabled={before === undefined} onClick={() => before !== undefined && go(before)}>
          <ArrowLeft aria-hidden="true" />
          {scoreWords.back}
        </button>
        <button
          type="button"
          className="setout-next"
          data-first=""
          aria-disabled={onwards === undefined}
          onClick={() => onwards !== undefined && go(onwards)}
        >
          {after === undefined ? scoreWords.nextEntry : scoreWords.next}
          <ArrowRight aria-hidden="true" />
        </button>
      </div>
    </>
  );
}
