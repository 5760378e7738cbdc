import { Printer } from 'lucide-react';
import { useState } from 'react';
import type { Layout } from '../../core/course/course.ts';
import { changeWords } from '../../words/change.ts';
import { useSettledCourse } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { type CompareMode, comparedLayouts, MOST_COMPARED, useCompared, useComparedState } from './compared.ts';
import { ComparisonPrint } from './comparison-print.tsx';
import { Differences } from './differences.tsx';
import { DifficultyParts } from './difficulty-parts.tsx';
import { MeasureTable } from './measure-table.tsx';

const MODES: Readonly<Record<CompareMode, string>> = {
  ghost: changeWords.oneOverOther,
  'side-by-side': changeWords.sideBySide,
};

/** The shown layout beside one or two others: in the arena, in figures, and in words. */
export function ComparePanel() {
  const compared = useCompared();
  const state = useComparedState((all) => all);
  // Not the course under the pointer: nothing here is worked out, or rendered, while something is dragged.
  const course = useSettledCourse();
  const [prints, setPrints] = useState(false);
  const others = course.layouts.filter(({ id }) => id !== course.current);
  if (others.length === 0) {
    return <p className="empty">{changeWords.oneLayout}</p>;
  }
  const chosen = comparedLayouts(course, state);
  const ids = [course.current, ...chosen.map(({ id }) => id)];
  return (
    <div className="inspector">
      <Choices others={others} chosen={chosen} />
      {chosen.length > 0 && (
        <>
          <ChoiceField
            label={changeWords.drawn}
            value={state.mode}
            options={MODES}
            choose={(mode) => compared.setMode(mode as CompareMode)}
          />
          <MeasureTable course={course} layouts={ids} />
          <DifficultyParts course={course} layouts={ids} />
          {chosen.map((layout) => (
            <Differences key={layout.id} course={course} from={layout} />
          ))}
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            {changeWords.printTheComparison}
          </button>
          {prints && <ComparisonPrint course={course} layouts={ids} close={() => setPrints(false)} />}
        </>
      )}
    </div>
  );
}

function Choices({ others, chosen }: { readonly others: readonly Layout[]; readonly chosen: readonly Layout[] }) {
  const compared = useCompared();
  const ids = chosen.map(({ id }) => id);
  const toggle = (id: string) => {
    if (ids.includes(id)) compared.compare(ids.filter((each) => each !== id));
    else compared.compare([...ids, id].slice(-MOST_COMPARED));
  };
  return (
    <fieldset className="choices">
      <legend>{changeWords.compareWith}</legend>
      {others.map(({ id, title }) => (
        <label key={id} className="tick">
          <input type="checkbox" checked={ids.includes(id)} onChange={() => toggle(id)} />
          {title}
        </label>
      ))}
      {others.length > MOST_COMPARED && <p className="small">{changeWords.atMostTwo}</p>}
    </fieldset>
  );
}
