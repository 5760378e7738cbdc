import { useEffect, useState } from 'react';
import type { Conflict } from '../../core/course/conflict.ts';
import type { Course } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { keepSuggestions, moreSuggestions } from '../../desk/constraints/constraint-suggestions.ts';
import { constraintStatusOf, freedomDescription } from '../../desk/constraints/freedom.ts';
import { type KeptConstraint, keptConstraints } from '../../desk/constraints/kept-list.ts';
import { setWords } from '../../words/set.ts';
import { ConflictResolutions } from '../arena/overlays/conflict-dialog.tsx';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { TypedField } from './typed-field.tsx';

/** The constraint status is worked out this long after the last change, milliseconds. */
const REST_MS = 120;

interface ConstraintReport {
  readonly course: Course;
  readonly conflicts: readonly Conflict[];
  /** Constraints that follow from the others. */
  readonly redundant: ReadonlySet<string>;
  /** What each asked obstacle can still do. */
  readonly says: readonly string[];
}

/** The constraint status, some time after the last change; null until it is known. */
function useConstraintReport(ids: readonly string[]): ConstraintReport | null {
  const course = useDeskState((state) => state.course);
  const isBusy = useDeskState((state) => state.gesture !== null);
  const [known, setKnown] = useState<ConstraintReport | null>(null);
  const asked = ids.join(' ');
  useEffect(() => {
    if (isBusy) return;
    const rest = setTimeout(() => {
      const { conflicts, redundant } = constraintStatusOf(course);
      const says =
        conflicts.length > 0 || asked === '' ? [] : asked.split(' ').map((id) => freedomDescription(course, id));
      setKnown({ course, conflicts, redundant: new Set(redundant.map(({ key }) => key)), says });
    }, REST_MS);
    return () => clearTimeout(rest);
  }, [course, isBusy, asked]);
  return known;
}

/** The constraints of the selection, further suggestions, and what can still move. */
export function KeptList() {
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const kept = keptConstraints({ survey, chosen });
  const ids = [...new Set(chosen.map(obstacleOf))];
  const firm = useConstraintReport(ids);
  const numbered = kept.filter((each) => each.text !== '');
  const plain = kept.filter((each) => each.text === '');
  const row = (each: KeptConstraint) => (
    <KeptRow
      key={each.keys.join(' ')}
      kept={each}
      isRedundant={each.keys.some((key) => firm?.redundant.has(key) === true)}
    />
  );
  return (
    <section className="inspector" aria-label={setWords.whatItKeeps}>
      {firm?.conflicts.map((conflict) => (
        <div key={conflict.says} className="conflict" role="alert">
          <ConflictResolutions conflict={conflict} />
        </div>
      ))}
      <h3>{setWords.whatItKeeps}</h3>
      {firm !== null && firm.says.length === 1 && <p className="firm">{firm.says[0]}</p>}
      {kept.length === 0 && <p className="small">{setWords.nothingKeptYet}</p>}
      <ul className="kept-rows">{numbered.map(row)}</ul>
      {plain.length > 0 && (
        <details className="kept-more">
          <summary>{setWords.withoutNumber(plain.length)}</summary>
          <ul className="kept-rows">{plain.map(row)}</ul>
        </details>
      )}
      <KeepSuggestions />
    </section>
  );
}

function KeptRow({ kept, isRedundant }: { readonly kept: KeptConstraint; readonly isRedundant: boolean }) {
  const desk = useDesk();
  const { keys, text, holds, says, name } = kept;
  return (
    <li>
      <p>{says}</p>
      {isRedundant && <p className="redundant">{setWords.alreadyFollowsFromOthers}</p>}
      <div className="kept-tools">
        {text !== '' && (
          <TypedField isLabelHidden label={name} value={text} send={(typed) => desk.setHold(keys, typed)} />
        )}
        {text !== '' && (
          <button
            type="button"
            className="link"
            aria-label={holds ? setWords.onlyMeasure(name) : setWords.hold(name)}
            onClick={() => (holds ? desk.measureOnly(keys) : desk.hold(keys))}
          >
            {holds ? setWords.onlyMeasureIt : setWords.holdIt}
          </button>
        )}
        <button type="button" className="link danger" aria-label={setWords.drop(name)} onClick={() => desk.drop(keys)}>
          {setWords.dropIt}
        </button>
      </div>
    </li>
  );
}

/** Further constraints, each at its present value. */
function KeepSuggestions() {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const isBusy = useDeskState((state) => state.gesture !== null);
  const suggestions = isBusy ? [] : keepSuggestions({ survey, chosen });
  const more = isBusy ? [] : moreSuggestions({ survey, chosen });
  if (suggestions.length === 0 && more.length === 0) return null;
  return (
    <>
      <h3>{setWords.keepMoreNow}</h3>
      <ul className="keep-suggestions">
        {suggestions.map((suggestion) => (
          <li key={suggestion.says}>
            <button type="button" className="button" onClick={() => desk.keep(suggestion)}>
              {suggestion.says}
            </button>
          </li>
        ))}
      </ul>
      {more.length > 0 && (
        <details className="kept-more">
          <summary>{setWords.otherThingsKeep(more.length)}</summary>
          <ul className="keep-suggestions">
            {more.map((suggestion) => (
              <li key={suggestion.says}>
                <button type="button" className="button" onClick={() => desk.keep(suggestion)}>
                  {suggestion.says}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
