import { Plus, Trash2 } from 'lucide-react';
import type { Leg } from '../../core/course/course.ts';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { addBend, approachSamples, removeBend } from '../../desk/gestures/bend.ts';
import { bendKey } from '../../desk/selection/selection.ts';
import { rideWords } from '../../words/ride.ts';
import { positionWords } from '../app-words.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';

/** The bends of the way to an obstacle: choose one, take it out, put one in. */
export function LegBends({ leg, place }: { readonly leg: Leg; readonly place: number }) {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const add = () => {
    const samples = approachSamples(survey, place);
    const middle = samples[Math.floor(samples.length / 2)];
    if (middle === undefined) return;
    desk.edit(rideWords.pullTheLine, (course) => addBend(course, { leg: leg.id, index: leg.bends.length }, middle));
  };
  return (
    <>
      <h3>{rideWords.bendsOfWay}</h3>
      {leg.bends.length === 0 && <p className="small">{rideWords.noBends}</p>}
      {leg.bends.length > 0 && (
        <ol className="rows">
          {leg.bends.map((at, index) => {
            const key = bendKey(leg.id, index);
            return (
              <li key={key}>
                <button
                  type="button"
                  className="row"
                  aria-pressed={chosen.includes(key)}
                  onClick={() => desk.choose([key])}
                >
                  <span className="row-title">
                    {rideWords.bend(index + 1)}
                    <small>{positionWords(at, survey.course.unit)}</small>
                  </span>
                </button>
                <button
                  type="button"
                  className="quiet"
                  aria-label={rideWords.takeOutBend(index + 1)}
                  title={rideWords.takeOutBend(index + 1)}
                  onClick={() =>
                    desk.edit(rideWords.takeOutABend, (course) => removeBend(course, { leg: leg.id, index }))
                  }
                >
                  <Trash2 aria-hidden="true" />
                </button>
              </li>
            );
          })}
        </ol>
      )}
      <div className="button-row">
        <button type="button" className="button" onClick={add}>
          <Plus aria-hidden="true" />
          {rideWords.addABend}
        </button>
        {leg.bends.length > 1 && (
          <button
            type="button"
            className="button"
            onClick={() => desk.edit(rideWords.straightenTheLine, (course) => changeLeg(course, leg.id, { bends: [] }))}
          >
            {rideWords.straightenWay}
          </button>
        )}
      </div>
    </>
  );
}
