import { difficulty } from '../../core/change/difficulty.ts';
import { layoutSurvey } from '../../core/change/layout-survey.ts';
import type { Course } from '../../core/course/course.ts';
import { changeWords } from '../../words/change.ts';
import { LayoutTable } from './layout-table.tsx';

/** Of what the difficulty of each layout is made up, with the reason for each part. */
export function DifficultyParts({ course, layouts }: { readonly course: Course; readonly layouts: readonly string[] }) {
  const all = layouts.map((id) => {
    const study = layoutSurvey(course, id);
    return { id, title: study.layout.title, parts: difficulty(study).parts };
  });
  const [first] = all;
  if (first === undefined) return null;
  // A part that no layout has says nothing here.
  const shown = first.parts.filter((_, part) => all.some(({ parts }) => (parts[part]?.points ?? 0) > 0));
  return (
    <details className="fold">
      <summary>{changeWords.whatMakesDifficulty}</summary>
      <LayoutTable label={changeWords.partsOfDifficulty} first={changeWords.part} layouts={all}>
        {shown.map((part) => (
          <tr key={part.id}>
            <th scope="row">
              {part.title}
              <small>{part.because}</small>
            </th>
            {all.map(({ id, parts }) => (
              <td key={id}>{parts.find((each) => each.id === part.id)?.points.toFixed(1) ?? '–'}</td>
            ))}
          </tr>
        ))}
      </LayoutTable>
      <p className="small">{changeWords.pointsAreEstimates}</p>
    </details>
  );
}
