/** link/ opens a course that stands in the address of the page. Here is what the page has to know before that comes. */
import { useSyncExternalStore } from 'react';
import { createStore } from 'zustand/vanilla';
import type { Course } from '../../core/course/course.ts';

/** What came of the address: the course that was opened from it, or why there is none (null: what reads it was not fetched). */
export type Linked =
  | { readonly kind: 'none' }
  | { readonly kind: 'opened'; readonly course: Course }
  | { readonly kind: 'refused'; readonly why: string | null };

const store = createStore<{ readonly linked: Linked }>()(() => ({ linked: { kind: 'none' } }));

export function useLinked(): Linked {
  return useSyncExternalStore(store.subscribe, () => store.getState().linked);
}

/** To be called when the course of an address lies on the desk, at Ride: its ride begins to play. */
export function putLinked(linked: Linked): void {
  store.setState({ linked });
}

/** Whether the part of an address behind the `#` holds a course. */
export function isCourseLink(hash: string): boolean {
  return hash.startsWith('#course=');
}

/** What comes of the address of the page as it is now. Nothing is opened yet. */
export async function readAddress(): Promise<Linked> {
  if (!isCourseLink(location.hash)) return { kind: 'none' };
  try {
    const { courseFromLink } = await import('../../core/files/course-link.ts');
    const reading = courseFromLink(location.hash);
    return reading.kind === 'read' ? { kind: 'opened', course: reading.course } : reading;
  } catch {
    return { kind: 'refused', why: null };
  }
}
