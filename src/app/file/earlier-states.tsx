import { useEffect, useState } from 'react';
import type { EarlierCourse } from '../../storage/library.ts';
import { fileWords } from '../../words/file.ts';
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
    desk.edit(fileWords.goBackTo(savedAtWords(saved)), () => reading.course);
    close();
  };
  return (
    <Dialog title={fileWords.earlierStatesOf} close={close}>
      <p className="small">{fileWords.whileYouWorkThis}</p>
      {refusal !== null && (
        <p className="refusal" role="alert">
          {refusal}
        </p>
      )}
      {states !== null && states.length === 0 && <p className="empty">{fileWords.noEarlierStateYet}</p>}
      <ul className="rows">
        {(states ?? []).map((each) => (
          <li key={each.number}>
            <span className="row-title">{savedAtWords(each.saved)}</span>
            <button type="button" className="button" onClick={() => void goBack(each)}>
              {fileWords.goBack}
            </button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
