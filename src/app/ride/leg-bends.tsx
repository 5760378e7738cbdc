import { Plus, Trash2 } from 'lucide-react';
import type { Leg } from '../../core/course/course.ts';
import { changeLeg } from '../../core/course/edit-ride.ts';
import { addBend, approachSamples, removeBend } from '../../desk/gestures/bend.ts';
import { bendKey } from '../../desk/selection/selection.ts';
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
    desk.edit('Pull the line', (course) => addBend(course, { leg: leg.id, index: leg.bends.length }, middle));
  };
  return (
    <>
      <h3>Bends of the way to it</h3>
      {leg.bends.length === 0 && (
        <p className="small">None: the line finds its own way. Pull it in the arena where it should bend.</p>
      )}
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
                    Bend {index + 1}
                    <small>{positionWords(at, survey.course.unit)}</small>
                  </span>
                </button>
                <button
                  type="button"
                  className="quiet"
                  aria-label={`Take out bend ${index + 1}`}
                  title={`Take out bend ${index + 1}`}
                  onClick={() => desk.edit('Take out a bend', (course) => removeBend(course, { leg: leg.id, index }))}
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
          Add a bend
        </button>
        {leg.bends.length > 1 && (
          <button
            type="button"
            className="button"
            onClick={() => desk.edit('Straighten the line', (course) => changeLeg(course, leg.id, { bends: [] }))}
          >
            Straighten the way to it
          </button>
        )}
      </div>
    </>
  );
}
