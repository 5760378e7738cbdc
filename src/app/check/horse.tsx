import { useState } from 'react';
import { HORSES } from '../../core/horses/horses.ts';
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
        label="Ridden by"
        value={horse.id}
        options={TITLES}
        choose={(next) => desk.edit('Change the horse', (course) => ({ ...course, horse: next }))}
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
        All that is assumed, with sources
      </button>
      {isTelling && (
        <Dialog wide title={`What is assumed: ${horse.title}`} close={() => setTelling(false)}>
          <p className="small">
            Landings, turns and times are worked out from these numbers. No horse was measured: look at who says so.
          </p>
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
          <th scope="col">What</th>
          <th scope="col">Value</th>
          <th scope="col">Says who</th>
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
