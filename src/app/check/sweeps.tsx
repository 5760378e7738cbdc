import { useId } from 'react';
import { sweepsOf } from '../../core/checks/geometry/sweep.ts';
import { checkWords } from '../../words/check.ts';
import { obstacleTitle } from '../app-words.ts';
import { useDesk, useDeskState, useRestingSurvey } from '../desk-context.tsx';
import { useView } from '../view.ts';
import { SweepPlayer } from './sweep-player.tsx';
import { clearanceWords, narrowestSweep } from './sweep-words.ts';

/** Every place where the horse backs or turns, with the room that is left; choosing one shows the ground it sweeps. */
export function Sweeps() {
  const desk = useDesk();
  const view = useView();
  const id = useId();
  const survey = useRestingSurvey();
  const chosen = useDeskState((state) => state.chosen);
  const ids = [...new Set(sweepsOf(survey).map(({ obstacle }) => obstacle))];
  if (ids.length === 0) return null;
  const chosenId = ids.find((each) => chosen.some((key) => key.split('/')[0] === each));
  const shown = chosenId === undefined ? undefined : narrowestSweep(chosenId, survey);
  return (
    <section className="sweeps" aria-labelledby={id}>
      <h3 id={id}>{checkWords.willHorseGoRound}</h3>
      <p className="small">{checkWords.leastRoomBesideHooves}</p>
      <ul className="rows">
        {ids.map((each) => {
          const sweep = narrowestSweep(each, survey);
          const obstacle = survey.layout.obstacles.find((one) => one.id === each);
          if (sweep === undefined || obstacle === undefined) return null;
          return (
            <li key={each}>
              <button
                type="button"
                className="row"
                aria-pressed={chosen.some((key) => key.split('/')[0] === each)}
                onClick={() => {
                  view.show(sweep.at);
                  desk.choose([each]);
                }}
              >
                <span className="number">{survey.numbers.get(each)?.join(', ') ?? '–'}</span>
                <span className="row-title">
                  {obstacleTitle(obstacle, survey.layout)}
                  <small>{clearanceWords(sweep, survey)}</small>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
      {shown !== undefined && <SweepPlayer key={shown.obstacle} sweep={shown} />}
    </section>
  );
}
