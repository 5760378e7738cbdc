import { Printer } from 'lucide-react';
import { useState } from 'react';
import { layoutById } from '../../core/change/layout-survey.ts';
import { changeWords } from '../../words/change.ts';
import { useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { CarryList } from './carry-list.tsx';
import { ChangeOverPrint } from './change-over-print.tsx';
import { ChangeOverSummary } from './change-over-summary.tsx';
import { EMPTY_ARENA, useCompared, useComparedState } from './compared.ts';
import { CrewFields } from './crew-fields.tsx';
import { useChangeOver } from './use-change-over.ts';

/** What a crew carries to make the shown layout out of another one, or out of nothing. */
export function ChangeOverPanel() {
  const compared = useCompared();
  const showsPlan = useComparedState((state) => state.showsPlan);
  const current = useDeskState(({ course: now }) => now.current);
  const [prints, setPrints] = useState(false);
  const { course, from, answer, isBusy, failure } = useChangeOver();
  const others = course.layouts.filter(({ id }) => id !== course.current);
  const shown = layoutById(course, course.current);
  const options = Object.fromEntries([
    ...others.map(({ id, title }) => [id, title] as const),
    [EMPTY_ARENA, changeWords.emptyArena],
  ]);
  return (
    <div className="inspector" aria-busy={isBusy || current !== course.current}>
      <ChoiceField
        label={changeWords.toGetStartingFrom(shown.title)}
        value={from ?? EMPTY_ARENA}
        options={options}
        choose={compared.startPlanFrom}
      />
      <CrewFields />
      {failure !== null && <p className="refusal">{changeWords.planFailed(failure)}</p>}
      {answer === null ? (
        <p className="waiting">{changeWords.workingOut}</p>
      ) : (
        <>
          <ChangeOverSummary plan={answer.told} unit={answer.of.course.unit} />
          <label className="tick">
            <input type="checkbox" checked={showsPlan} onChange={(event) => compared.showPlan(event.target.checked)} />
            {changeWords.showCarriesArena}
          </label>
          <CarryList plan={answer.told} of={answer.of} />
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            {changeWords.printCrewsSheet}
          </button>
        </>
      )}
      {prints && answer !== null && (
        <ChangeOverPrint plan={answer.told} of={answer.of} close={() => setPrints(false)} />
      )}
    </div>
  );
}
