import { Printer } from 'lucide-react';
import { useMemo, useState } from 'react';
import { layoutById } from '../../core/change/layout-survey.ts';
import { useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { CarryList } from './carry-list.tsx';
import { ChangeOverPrint } from './change-over-print.tsx';
import { ChangeOverSummary } from './change-over-summary.tsx';
import { EMPTY_ARENA, planStart, useCompared, useComparedState } from './compared.ts';
import { CrewFields } from './crew-fields.tsx';
import type { ChangeOverQuestion } from './plan-questions.ts';
import { useAnswer } from './use-answer.ts';
import { useSettledCourse } from './use-settled-course.ts';

/** What a crew carries to make the shown layout out of another one, or out of nothing. */
export function ChangeOverPanel() {
  const compared = useCompared();
  const course = useSettledCourse();
  const state = useComparedState((all) => all);
  const current = useDeskState(({ course: now }) => now.current);
  const [prints, setPrints] = useState(false);
  const others = course.layouts.filter(({ id }) => id !== course.current);
  const from = planStart(course, state);
  const question = useMemo(
    (): ChangeOverQuestion => ({ kind: 'change-over', course, from, to: course.current }),
    [course, from],
  );
  const { answer, isBusy, failure } = useAnswer(question);
  const shown = layoutById(course, course.current);
  const options = Object.fromEntries([
    ...others.map(({ id, title }) => [id, title] as const),
    [EMPTY_ARENA, 'The empty arena'],
  ]);
  return (
    <div className="inspector" aria-busy={isBusy || current !== course.current}>
      <ChoiceField
        label={`To get ${shown.title}, starting from`}
        value={from ?? EMPTY_ARENA}
        options={options}
        choose={compared.startPlanFrom}
      />
      <CrewFields />
      {failure !== null && <p className="refusal">The plan could not be worked out: {failure}</p>}
      {answer === null ? (
        <p className="waiting">Working out who carries what…</p>
      ) : (
        <>
          <ChangeOverSummary plan={answer.told} unit={answer.of.course.unit} />
          <label className="tick">
            <input
              type="checkbox"
              checked={state.showsPlan}
              onChange={(event) => compared.showPlan(event.target.checked)}
            />
            Show the carries in the arena
          </label>
          <CarryList plan={answer.told} of={answer.of} />
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            Print the crew’s sheet
          </button>
        </>
      )}
      {prints && answer !== null && (
        <ChangeOverPrint plan={answer.told} of={answer.of} close={() => setPrints(false)} />
      )}
    </div>
  );
}
