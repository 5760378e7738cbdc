import { Ruler } from 'lucide-react';
import type { SetOut } from '../../core/setout/setout.ts';
import { readingWords, walkWords } from '../../core/setout/words/reading-words.ts';
import { partNames, partTitle } from '../../core/setout/words/setout-words.ts';
import { survey as surveyOf } from '../../core/survey.ts';
import { capitalized } from '../../core/text/sentence.ts';
import { setoutWords } from '../../words/setout.ts';
import type { SetOutQuestion } from '../change/plan-questions.ts';
import { useAnswer } from '../change/use-answer.ts';
import { useDesk, useSettledCourse } from '../desk-context.tsx';
import { openCompanion } from './companion-door.ts';
import { drawingPrint } from './drawing-print.ts';
import { setOutQuestion } from './setout-question.ts';
import { TapeFields } from './tape-fields.tsx';

/** How the shown layout is set out with tapes, and the door to the companion in the arena. */
export function SetOutPanel() {
  const desk = useDesk();
  const course = useSettledCourse();
  const { answer, isBusy, failure } = useAnswer(setOutQuestion(course));
  return (
    <div className="inspector" aria-busy={isBusy}>
      {answer !== null && answer.told.parts.length > 0 && (
        <button
          type="button"
          className="button primary"
          onClick={() => openCompanion({ drawing: drawingPrint(desk.state().course), obstacles: [] })}
        >
          <Ruler aria-hidden="true" />
          {setoutWords.setItOut}
        </button>
      )}
      <TapeFields />
      {failure !== null && <p className="refusal">{setoutWords.planFailed(failure)}</p>}
      {answer === null ? (
        failure === null && <p className="waiting">{setoutWords.workingOut}</p>
      ) : answer.told.parts.length === 0 ? (
        <p className="empty">{setoutWords.nothingToSetOut}</p>
      ) : (
        <Summary plan={answer.told} of={answer.of} />
      )}
    </div>
  );
}

function Summary({ plan, of }: { readonly plan: SetOut; readonly of: SetOutQuestion }) {
  const survey = surveyOf(of.course);
  const { worstGap, walked, parts, crew, gaps } = plan;
  return (
    <>
      <dl className="facts">
        <div>
          <dt>{setoutWords.worstGap}</dt>
          <dd>
            {gaps.some(({ isRidden }) => isRidden)
              ? setoutWords.plusMinus(readingWords(worstGap, crew.marked))
              : setoutWords.noGap}
          </dd>
        </div>
        <div>
          <dt>{setoutWords.walking}</dt>
          <dd>{walkWords(walked, crew.marked)}</dd>
        </div>
      </dl>
      <h3>{setoutWords.partsInOrder}</h3>
      <ol className="setout-order">
        {parts.map((part, index) => (
          <li key={part.steps[0].piece}>
            <span>
              {index + 1}. {capitalized(partTitle(partNames(survey, plan, part)))}
            </span>
            <small>{setoutWords.steps(part.steps.length)}</small>
          </li>
        ))}
      </ol>
    </>
  );
}
