import { useId, useState } from 'react';
import { shelfObstacle } from '../../desk/placing/custom-obstacles.ts';
import { chosenPieces } from '../../desk/selection/selection.ts';
import { setWords } from '../../words/set.ts';
import { useDesk, useDeskState } from '../desk-context.tsx';
import { putOnShelf } from './own-shelf.ts';

/** What makes an obstacle of the designer's own of what is chosen. */
export function OwnTools() {
  const desk = useDesk();
  const survey = useDeskState((state) => state.survey);
  const chosen = useDeskState((state) => state.chosen);
  const id = useId();
  const [title, setTitle] = useState('');
  const [announced, setAnnounced] = useState('');
  const pieces = chosenPieces(survey, chosen);
  if (pieces.length === 0) return null;
  const put = async () => {
    const name = title.trim();
    const obstacle = shelfObstacle({ survey, chosen });
    if (obstacle === null) return;
    if (name === '') return setAnnounced(setWords.giveNameFirst);
    await putOnShelf(name, obstacle, Date.now());
    setTitle('');
    setAnnounced(setWords.onYourShelfLast(name));
  };
  return (
    <section className="inspector" aria-label={setWords.yourOwn}>
      <h3>{setWords.yourOwn}</h3>
      {chosen.length > 1 && pieces.length > 1 && (
        <button type="button" className="button" onClick={() => desk.gather()}>
          {setWords.gatherIntoOneObstacle}
        </button>
      )}
      <form
        className="own-form"
        onSubmit={(event) => {
          event.preventDefault();
          void put();
        }}
      >
        <div className="field">
          <label htmlFor={id}>{setWords.nameOnMyShelf}</label>
          <input
            id={id}
            type="text"
            value={title}
            maxLength={80}
            autoComplete="off"
            onChange={(event) => setTitle(event.target.value)}
          />
        </div>
        <button type="submit" className="button">
          {setWords.putOnMyShelf}
        </button>
      </form>
      <p className="small" role="status">
        {announced}
      </p>
    </section>
  );
}
