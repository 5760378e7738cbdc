import { Printer } from 'lucide-react';
import { useState } from 'react';
import type { Layout } from '../../core/course/course.ts';
import { useDeskState } from '../desk-context.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { type CompareMode, comparedLayouts, MOST_COMPARED, useCompared, useComparedState } from './compared.ts';
import { ComparisonPrint } from './comparison-print.tsx';
import { Differences } from './differences.tsx';
import { DifficultyParts } from './difficulty-parts.tsx';
import { MeasureTable } from './measure-table.tsx';
import { useSettledCourse } from './use-settled-course.ts';

const MODES: Readonly<Record<CompareMode, string>> = {
  ghost: 'One over the other',
  'side-by-side': 'Side by side',
};

/** The shown layout beside one or two others: in the arena, in figures, and in words. */
export function ComparePanel() {
  const compared = useCompared();
  const course = useDeskState((state) => state.course);
  const state = useComparedState((all) => all);
  const settled = useSettledCourse();
  const [prints, setPrints] = useState(false);
  const others = course.layouts.filter(({ id }) => id !== course.current);
  if (others.length === 0) {
    return (
      <p className="empty">
        There is one layout. Branch it and change the branch: here you see what differs, and what the change costs.
      </p>
    );
  }
  const chosen = comparedLayouts(course, state);
  // Right after an undo the settled course may lack what is chosen now.
  const known = comparedLayouts(settled, state);
  const ids = [settled.current, ...known.map(({ id }) => id)];
  return (
    <div className="inspector">
      <Choices others={others} chosen={chosen} />
      {chosen.length > 0 && (
        <ChoiceField
          label="Drawn"
          value={state.mode}
          options={MODES}
          choose={(mode) => compared.setMode(mode as CompareMode)}
        />
      )}
      {known.length > 0 && (
        <>
          <MeasureTable course={settled} layouts={ids} />
          <DifficultyParts course={settled} layouts={ids} />
          {known.map((layout) => (
            <Differences key={layout.id} course={settled} from={layout} />
          ))}
          <button type="button" className="button" onClick={() => setPrints(true)}>
            <Printer aria-hidden="true" />
            Print the comparison
          </button>
          {prints && <ComparisonPrint course={settled} layouts={ids} close={() => setPrints(false)} />}
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
      <legend>Compare with</legend>
      {others.map(({ id, title }) => (
        <label key={id} className="tick">
          <input type="checkbox" checked={ids.includes(id)} onChange={() => toggle(id)} />
          {title}
        </label>
      ))}
      {others.length > MOST_COMPARED && <p className="small">At most two at a time.</p>}
    </fieldset>
  );
}
