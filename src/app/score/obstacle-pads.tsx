import { Minus } from 'lucide-react';
import { useId, useState } from 'react';
import { pointsText } from '../../core/score/card-table.ts';
import type { CardColumn, CardEntry, ScoreCard } from '../../core/score/score-card.ts';
import type { Tap } from '../../core/score/taps.ts';
import { scoreWords } from '../../words/score.ts';
import { scoreSteps } from './judge-keys.ts';

interface PadProps {
  readonly card: ScoreCard;
  readonly entry: CardEntry;
  readonly leg: string;
  tap(tap: Tap): void;
}

/** The scores of the list, each with its word. Pressed again, it is taken back. */
export function ScorePad({ card, entry, leg, tap }: PadProps) {
  const { scoring } = card;
  const given = entry.cells[leg]?.score;
  const give = (score: number | 'none') =>
    tap({ kind: 'score', entry: entry.id, leg, score: given === score ? null : score });
  return (
    <fieldset className="score-pad">
      <legend>{scoreWords.score}</legend>
      {scoreSteps(card).map((step) => (
        <button key={step} type="button" aria-pressed={given === step} onClick={() => give(step)}>
          <b>{pointsText(step, 'plus')}</b> <small>{scoring.scale.words[String(step)]}</small>
        </button>
      ))}
      {scoring.unscored !== undefined && (
        <button type="button" aria-pressed={given === 'none'} title={scoring.unscored} onClick={() => give('none')}>
          <b>{scoreWords.noScore}</b>
        </button>
      )}
    </fieldset>
  );
}

/** The faults of the list by their points; each can be given more than once, and taken back. */
export function PenaltyPad({ card, entry, leg, tap }: PadProps) {
  const note = useId();
  const cell = entry.cells[leg];
  const { penalties } = card.scoring;
  const points = [...new Set(penalties.map((each) => each.points))];
  const place = { entry: entry.id, leg };
  return (
    <fieldset className="score-penalties">
      <legend>{scoreWords.penalties}</legend>
      {points.map((each) => (
        <ul key={each} aria-label={pointsText(-each)}>
          {penalties
            .filter((penalty) => penalty.points === each)
            .map(({ id, fault, source }) => {
              const count = cell?.penalties.filter((given) => given === id).length ?? 0;
              return (
                <li key={id} className={count > 0 ? 'is-given' : ''}>
                  <button
                    type="button"
                    className="score-fault"
                    title={source}
                    onClick={() => tap({ kind: 'penalty', ...place, penalty: id, by: 1 })}
                  >
                    <b>{pointsText(-each)}</b> <span>{fault}</span>
                    {count > 0 && (
                      <em>
                        <span aria-hidden="true">×{count}</span>
                        <span className="visually-hidden">, {scoreWords.times(count)}</span>
                      </em>
                    )}
                  </button>
                  {count > 0 && (
                    <button
                      type="button"
                      className="score-less"
                      aria-label={scoreWords.takeBack(fault)}
                      onClick={() => tap({ kind: 'penalty', ...place, penalty: id, by: -1 })}
                    >
                      <Minus aria-hidden="true" />
                    </button>
                  )}
                </li>
              );
            })}
        </ul>
      ))}
      <div className="field">
        <label htmlFor={note}>{scoreWords.noteHere}</label>
        <input
          id={note}
          value={cell?.note ?? ''}
          maxLength={500}
          onChange={(event) => tap({ kind: 'remark', ...place, note: event.target.value })}
        />
      </div>
    </fieldset>
  );
}

/** An obstacle that counts for nobody, such as one that broke. */
export function StrikeField({ column, tap }: { readonly column: CardColumn; tap(tap: Tap): void }) {
  const field = useId();
  const [why, setWhy] = useState('');
  const { leg, struck } = column;
  if (struck !== undefined) {
    return (
      <p>
        <button type="button" className="button" onClick={() => tap({ kind: 'strike', leg, why: '' })}>
          {scoreWords.strikeUndo}
        </button>
      </p>
    );
  }
  return (
    <details className="score-more">
      <summary>{scoreWords.strike}</summary>
      <div className="field">
        <label htmlFor={field}>{scoreWords.strikeWhy}</label>
        <input id={field} value={why} maxLength={200} onChange={(event) => setWhy(event.target.value)} />
      </div>
      <button
        type="button"
        className="button"
        aria-disabled={why.trim() === ''}
        onClick={() => why.trim() !== '' && tap({ kind: 'strike', leg, why: why.trim() })}
      >
        {scoreWords.strikeDo}
      </button>
    </details>
  );
}
