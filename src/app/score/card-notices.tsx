import { scoreWords } from '../../words/score.ts';
import type { CardState } from './card-store.ts';
import type { ScoreFrameProps } from './score-props.ts';

/** What stands in the way of judging, and what can be done about it. */
export function CardNotices({
  state: { card, isKept, isElsewhere, unreadable },
  book,
  hasColumns,
  takeColumns,
  clear,
}: ScoreFrameProps & { readonly state: CardState }) {
  const isOther = !hasColumns(card) && !isElsewhere;
  const isOtherBook = card.scoring.book !== book;
  return (
    <div className="score-notices">
      {isElsewhere && <p role="alert">{scoreWords.elsewhere}</p>}
      {!isKept && <p role="alert">{scoreWords.notKept}</p>}
      {unreadable !== undefined && (
        <p role="alert">
          {scoreWords.unreadable(unreadable)}{' '}
          <button type="button" className="button" onClick={clear}>
            {scoreWords.overwrite}
          </button>
        </p>
      )}
      {isOther && (
        <p>
          {scoreWords.changed}{' '}
          <button type="button" className="button" onClick={takeColumns}>
            {scoreWords.takeObstacles}
          </button>
        </p>
      )}
      {isOtherBook && <p>{scoreWords.otherBook(card.scoring.book, book)}</p>}
    </div>
  );
}
