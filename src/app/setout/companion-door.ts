/** Whether the companion is open stands in the address, so that a reload, a link and the browser's Back all find it. */
import { useSyncExternalStore } from 'react';

/** What the address says of the companion. */
export interface CompanionLink {
  /** The print of the drawing that it is about. */
  readonly drawing: string;
  /** An obstacle of each part that is shown; empty: all parts. */
  readonly obstacles: readonly string[];
}

const NAME = '#set-out=';
const APART = '.';
const AND = '+';

/** The fragment of an address that opens the companion. */
export function companionFragment({ drawing, obstacles }: CompanionLink): string {
  const parts = obstacles.map(encodeURIComponent).join(AND);
  return `${NAME}${drawing}${parts === '' ? '' : APART}${parts}`;
}

/** What a fragment says; null where it is about something else, or cannot be read. */
export function readFragment(fragment: string): CompanionLink | null {
  if (!fragment.startsWith(NAME)) return null;
  const [drawing = '', ...rest] = fragment.slice(NAME.length).split(APART);
  // An id may have a dot of its own.
  const parts = rest.join(APART);
  if (!/^[a-z0-9]+$/.test(drawing)) return null;
  try {
    const obstacles = parts.split(AND).map(decodeURIComponent);
    return { drawing, obstacles: obstacles.filter((each) => each !== '') };
  } catch {
    return null;
  }
}

let last: { readonly fragment: string; readonly link: CompanionLink | null } = { fragment: '', link: null };

/** The same object while the address is the same. */
function linkNow(): CompanionLink | null {
  const fragment = location.hash;
  if (fragment !== last.fragment) last = { fragment, link: readFragment(fragment) };
  return last.link;
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

/** What is open; null: the companion is not. */
export function useCompanionLink(): CompanionLink | null {
  return useSyncExternalStore(subscribe, linkNow);
}

/** The state of an entry of the browser's history that the app made: the one before it is the app without the companion. */
const OPENED = { setOut: 'opened' } as const;

function isOpenedHere(): boolean {
  const state: unknown = history.state;
  return typeof state === 'object' && state !== null && 'setOut' in state;
}

/** The browser tells of no change that a page makes itself. */
function tell(): void {
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}

/** Opens it so that the browser's Back leaves it, and not the app. */
export function openCompanion(link: CompanionLink): void {
  history.pushState(OPENED, '', companionFragment(link));
  tell();
}

/** Shows other parts, without a step back to those before. */
export function changeCompanion(link: CompanionLink): void {
  history.replaceState(history.state, '', companionFragment(link));
  tell();
}

export function closeCompanion(): void {
  if (isOpenedHere()) {
    history.back();
    return;
  }
  history.replaceState(null, '', location.pathname + location.search);
  tell();
}
