import { createContext, useContext, useSyncExternalStore } from 'react';
import type { Keeper, Keeping } from './autosave.ts';

export const KeeperContext = createContext<Keeper | null>(null);

export function useKeeper(): Keeper {
  const keeper = useContext(KeeperContext);
  if (keeper === null) throw new Error('useKeeper: there is no KeeperContext above');
  return keeper;
}

export function useKeeping(): Keeping {
  const keeper = useKeeper();
  return useSyncExternalStore(keeper.listen, keeper.state);
}

/** What stands in the way of keeping the course, and what to do. */
export function KeepingNotice() {
  const keeper = useKeeper();
  const { trouble, elsewhere } = useKeeping();
  const says = elsewhere ?? trouble;
  if (says === undefined) return null;
  return (
    <div className="notice" role="alert">
      <p>{says}</p>
      {elsewhere !== undefined && (
        <button type="button" className="button" onClick={() => keeper.part()}>
          Work on a copy here
        </button>
      )}
    </div>
  );
}
