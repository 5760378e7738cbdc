import { differenceWords, goDifferenceWords, obstacleLabel } from '../../core/change/difference-words.ts';
import { layoutDifferences } from '../../core/change/differences.ts';
import { goDifferences } from '../../core/change/go-differences.ts';
import { layoutById } from '../../core/change/layout-survey.ts';
import type { Course, Layout } from '../../core/course/course.ts';
import { changeWords } from '../../words/change.ts';
import { useDesk } from '../desk-context.tsx';
import { useCompared } from './compared.ts';

/** What is otherwise in the shown layout than in another one: on the ground, then in the go. */
export function Differences({ course, from }: { readonly course: Course; readonly from: Layout }) {
  const desk = useDesk();
  const compared = useCompared();
  const shown = layoutById(course, course.current);
  const ground = layoutDifferences(from, shown).map((each) => ({
    obstacle: each.obstacle,
    layout: each.kind === 'went' ? from : shown,
    isThere: each.kind !== 'went',
    words: differenceWords(each, course.unit),
  }));
  const go = goDifferences(from, shown).map((each) => ({
    obstacle: each.obstacle,
    layout: each.kind === 'left-out' ? from : shown,
    isThere: each.kind !== 'left-out',
    words: goDifferenceWords(each),
  }));
  const rows = [...ground, ...go];
  return (
    <section className="differences" aria-label={changeWords.whatDiffersFrom(from.title)}>
      <h3>{changeWords.whatDiffersFrom(from.title)}</h3>
      {rows.length === 0 && <p className="empty is-good">{changeWords.noDifference}</p>}
      <ul className="rows">
        {rows.map(({ obstacle, layout, isThere, words }) => (
          <li key={`${obstacle.id} ${words}`}>
            <button
              type="button"
              className="row"
              disabled={!isThere}
              onClick={() => desk.choose([obstacle.id])}
              onPointerEnter={() => compared.focus(obstacle.id)}
              onPointerLeave={() => compared.focus(null)}
              onFocus={() => compared.focus(obstacle.id)}
              onBlur={() => compared.focus(null)}
            >
              <span className="row-title">
                {obstacleLabel(obstacle, layout)}
                <small>{words}</small>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
