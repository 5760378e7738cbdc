import { useEffect, useState } from 'react';
import type { EarlierCourse } from '../../storage/library.ts';
import { useCourseSaver } from '../autosave-context.tsx';
import { useDesk } from '../desk-context.tsx';
import { Dialog } from '../dialog.tsx';
import { savedAtWords } from './date-words.ts';

/** The earlier states of the open course. Going back to one is a step in the history: undo returns to here. */
export function EarlierStates({ close }: { close(): void }) {
  const desk = useDesk();
  const keeper = useCourseSaver();
  const [states, setStates] = useState<readonly EarlierCourse[] | null>(null);
  const [refusal, setRefusal] = useState<string | null>(null);
  useEffect(() => {
    let isShown = true;
    void keeper.earlier().then((found) => isShown && setStates(found.slice(1)));
    return () => {
      isShown = false;
    };
  }, [keeper]);
  const goBack = async ({ number, saved }: EarlierCourse) => {
    const reading = await keeper.readEarlier(number);
    if (reading.kind === 'refused') {
      setRefusal(reading.why);
      return;
    }
    desk.edit(`Go back to ${savedAtWords(saved)}`, () => reading.course);
    close();
  };
  return (
    <Dialog title="Earlier states of this course" close={close}>
      <p className="small">
        While you work, this browser keeps the course every two minutes or so, the last twenty times. Going back can be
        undone.
      </p>
      {refusal !== null && (
        <p className="refusal" role="alert">
          {refusal}
        </p>
      )}
      {states !== null && states.length === 0 && <p className="empty">There is no earlier state yet.</p>}
      <ul className="rows">
        {(states ?? []).map((each) => (
          <li key={each.number}>
            <span className="row-title">{savedAtWords(each.saved)}</span>
            <button type="button" className="button" onClick={() => void goBack(each)}>
              Go back to it
            </button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
