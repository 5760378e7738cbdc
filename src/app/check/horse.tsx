import { useState } from 'react';
import { HORSES } from '../../core/horses/horses.ts';
import { checkWords } from '../../words/check.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { ChoiceField } from '../set/choice-field.tsx';
import { type Assumption, assumptions, GRADE_WORDS } from './assumptions.ts';

const TITLES = Object.fromEntries(HORSES.map((horse) => [horse.id, horse.title]));

/** Which horse the course is judged for, and what is assumed about it. */
export function HorsePanel() {
  const desk = useDesk();
  const unit = useDeskState((state) => state.course.unit);
  const horse = useDeskState((state) => state.survey.horse);
  const [isTelling, setTelling] = useState(false);
  const all = assumptions(horse, unit);
  return (
    <div className="inspector one-column">
      <ChoiceField
        label={checkWords.riddenBy}
        value={horse.id}
        options={TITLES}
        choose={(next) => desk.edit(checkWords.changeTheHorse, (course) => ({ ...course, horse: next }))}
      />
      <dl className="facts">
        {all
          .filter((each) => each.isChief)
          .map(({ what, value }) => (
            <div key={what}>
              <dt>{what}</dt>
              <dd>{value}</dd>
            </div>
          ))}
      </dl>
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setTelling(true)}>
        {checkWords.allAssumedWithSources}
      </button>
      {isTelling && (
        <Dialog wide title={checkWords.whatIsAssumed(horse.title)} close={() => setTelling(false)}>
          <p className="small">{checkWords.landingsTurnsTimesWorked}</p>
          <Assumptions all={all} />
        </Dialog>
      )}
    </div>
  );
}

function Assumptions({ all }: { readonly all: readonly Assumption[] }) {
  return (
    <table className="assumed">
      <thead>
        <tr>
          <th scope="col">{checkWords.what}</th>
          <th scope="col">{checkWords.value}</th>
          <th scope="col">{checkWords.source}</th>
        </tr>
      </thead>
      <tbody>
        {all.map(({ what, value, grade, source }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{value}</td>
            <td>
              <span className="tag">{GRADE_WORDS[grade]}</span>{' '}
              {grade === 'E' ? source.replace(/^estimate\b[:,]? ?/, '') : source}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
