/** app/ shows what the desk knows and passes on what people do. Nothing imports it. */
import { createContext, type ReactNode, useCallback, useContext, useSyncExternalStore } from 'react';
import type { Desk, DeskState } from '../desk/desk.ts';

const DeskContext = createContext<Desk | null>(null);

export function DeskProvider({ desk, children }: { readonly desk: Desk; readonly children: ReactNode }) {
  return <DeskContext value={desk}>{children}</DeskContext>;
}

/** The desk on which the course lies. */
export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error('useDesk: there is no DeskProvider above');
  return desk;
}

/** A part of the desk's state, read again after each change. `pick` must return something that the state holds. */
export function useDeskState<Part>(pick: (state: DeskState) => Part): Part {
  const desk = useDesk();
  const subscribe = useCallback((listener: () => void) => desk.subscribe(listener), [desk]);
  return useSyncExternalStore(subscribe, () => pick(desk.state()));
}
