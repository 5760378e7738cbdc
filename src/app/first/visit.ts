import { useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import { type FirstVisit, NEW_HERE, readFirstVisit, writeFirstVisit } from '../../storage/first-visit.ts';

/** How many hints there are, which the page has to know before it fetches their words. */
export const HINTS = 3;

/** What is shown of the first visit; null until it is known whether this is one. */
const store = createStore<{ readonly visit: FirstVisit | null }>()(() => ({ visit: readFirstVisit() }));

export function useFirstVisit(): FirstVisit | null {
  return useSyncExternalStore(store.subscribe, () => store.getState().visit);
}

/** Remembers what is behind the person now. */
export function passFirstVisit(passed: Partial<FirstVisit>): void {
  const visit = { ...(store.getState().visit ?? NEW_HERE), ...passed };
  writeFirstVisit(visit);
  store.setState({ visit });
}

/** Shows the hints from the first one; the example waits until it is asked for. */
export function showHintsAgain(): void {
  passFirstVisit({ hints: 0, example: true });
}
