import { ClipboardPen } from 'lucide-react';
import { cardScoring } from '../../core/score/card-scoring.ts';
import { scoreWords } from '../../words/score.ts';
import { useSettledCourse } from '../desk-context.tsx';
import { openScore } from './score-door.ts';

/** The door to the score card, and what it scores by. */
export function ScorePanel() {
  const course = useSettledCourse();
  const layout = course.layouts.find(({ id }) => id === course.current) ?? course.layouts[0];
  const { list = [] } = course.class;
  const scoring = cardScoring(course.rulebook);
  const hasLegs = layout.ride.legs.length > 0;
  return (
    <div className="inspector">
      {hasLegs && (
        <button type="button" className="button primary" onClick={openScore}>
          <ClipboardPen aria-hidden="true" />
          {scoreWords.openCard}
        </button>
      )}
      {!hasLegs && <p className="empty">{scoreWords.noObstacles}</p>}
      <p>{scoreWords.about}</p>
      <p>{list.length === 0 ? scoreWords.noEntries : scoreWords.entriesOf(list.length)}</p>
      <p>{scoreWords.onPaper}</p>
      <h3>{scoreWords.list}</h3>
      {scoring.about.map((text) => (
        <p key={text} className="field-note">
          {text}
        </p>
      ))}
      <p className="field-note">{scoreWords.officially}</p>
    </div>
  );
}
