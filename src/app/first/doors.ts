import { useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { NewCourseForm } from './new-course.ts';

/** What is open of the dialogs from which a course is begun; several places of the page open the same one. */
interface Doors {
  readonly open: 'new-course' | 'starters' | null;
  /** The form as it was left, so that closing it loses nothing; null: not begun. */
  readonly form: NewCourseForm | null;
}

const store = createStore<Doors>()(() => ({ open: null, form: null }));

export function useDoors(): Doors {
  return useSyncExternalStore(store.subscribe, store.getState);
}

export function openDoor(open: Exclude<Doors['open'], null>): void {
  store.setState({ open });
}

export function closeDoor(): void {
  store.setState({ open: null });
}

/** Remembers the form while it is filled in; null once a course was made of it. */
export function writeForm(form: NewCourseForm | null): void {
  store.setState({ form });
}
