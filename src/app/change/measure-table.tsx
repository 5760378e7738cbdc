import { Check } from 'lucide-react';
import { useMemo } from 'react';
import { type ComparedMeasure, comparison } from '../../core/change/comparison.ts';
import { MEASURES } from '../../core/change/measures.ts';
import type { Course } from '../../core/course/course.ts';
import { changeWords } from '../../words/change.ts';
import { terms } from '../../words/terms.ts';
import { useCompared, useComparedState } from './compared.ts';
import { LayoutTable } from './layout-table.tsx';

/** The layouts by every measure that is wanted; the better one is marked where one is better. */
export function MeasureTable({ course, layouts }: { readonly course: Course; readonly layouts: readonly string[] }) {
  const leftOut = useComparedState((state) => state.leftOut);
  const key = layouts.join(' ');
  const table = useMemo(() => {
    const wanted = MEASURES.filter(({ id }) => !leftOut.includes(id));
    return comparison(course, key.split(' '), wanted);
  }, [course, key, leftOut]);
  return (
    <>
      <LayoutTable label={changeWords.measuresOfLayouts} first={terms.measure} layouts={table.layouts}>
        {table.measures.map((row) => (
          <Row key={row.measure.id} row={row} />
        ))}
      </LayoutTable>
      <p className="small">
        <Check aria-hidden="true" className="better-sign" /> {changeWords.marksTheBetter}
      </p>
      <MeasureChoice />
    </>
  );
}

function Row({ row: { measure, values, differs } }: { readonly row: ComparedMeasure }) {
  return (
    <tr className={differs ? undefined : 'is-same'}>
      <th scope="row" title={measure.says}>
        {measure.title}
      </th>
      {values.map(({ layout, text, best }) => (
        <td key={layout} className={best ? 'is-better' : undefined}>
          {text}
          {best && (
            <>
              <Check aria-hidden="true" className="better-sign" />
              <span className="visually-hidden">{changeWords.better}</span>
            </>
          )}
        </td>
      ))}
    </tr>
  );
}

/** Which measures the table has, each with what it says. */
function MeasureChoice() {
  const compared = useCompared();
  const leftOut = useComparedState((state) => state.leftOut);
  return (
    <details className="fold">
      <summary>{changeWords.chooseMeasures(MEASURES.length - leftOut.length, MEASURES.length)}</summary>
      <ul className="measure-choice">
        {MEASURES.map(({ id, title, says }) => (
          <li key={id}>
            <label className="tick">
              <input
                type="checkbox"
                checked={!leftOut.includes(id)}
                onChange={() => compared.toggleMeasure(id)}
                aria-describedby={`measure-${id}`}
              />
              {title}
            </label>
            <p id={`measure-${id}`} className="small">
              {says}
            </p>
          </li>
        ))}
      </ul>
    </details>
  );
}
