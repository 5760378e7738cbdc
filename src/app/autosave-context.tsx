import { createContext, useContext, useSyncExternalStore } from 'react';
import { appWords } from '../words/app.ts';
import type { CourseSaver, SaveState } from './autosave.ts';

export const CourseSaverContext = createContext<CourseSaver | null>(null);

export function useCourseSaver(): CourseSaver {
  const saver = useContext(CourseSaverContext);
  if (saver === null) throw new Error('useCourseSaver: there is no CourseSaverContext above');
  return saver;
}

export function useSaveState(): SaveState {
  const saver = useCourseSaver();
  return useSyncExternalStore(saver.subscribe, saver.state);
}

/** Why the course is not being saved, and what to do. */
export function SaveNotice() {
  const saver = useCourseSaver();
  const { errorMessage, lockedElsewhere } = useSaveState();
  const says = lockedElsewhere ?? errorMessage;
  if (says === undefined) return null;
  return (
    <div className="notice" role="alert">
      <p>{says}</p>
      {lockedElsewhere !== undefined && (
        <button type="button" className="button" onClick={() => saver.saveAsCopy()}>
          {appWords.workOnCopyHere}
        </button>
      )}
    </div>
  );
}
