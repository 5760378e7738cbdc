/** Whether the score card is open stands in the address, so that a reload and the browser's Back find it. */
import { useSyncExternalStore } from 'react';

const NAME = '#score';
/** The state of an entry of the browser's history that the app made: the one before it is the app without the card. */
const OPENED = { score: 'opened' } as const;

function subscribe(listener: () => void): () => void {
  window.addEventListener('hashchange', listener);
  return () => window.removeEventListener('hashchange', listener);
}

export function useIsScoreOpen(): boolean {
  return useSyncExternalStore(subscribe, () => location.hash === NAME);
}

/** The browser tells of no change that a page makes itself. */
function tell(): void {
  window.dispatchEvent(new HashChangeEvent('hashchange'));
}

/** Opens it so that the browser's Back leaves it, and not the app. */
export function openScore(): void {
  history.pushState(OPENED, '', NAME);
  tell();
}

export function closeScore(): void {
  const state: unknown = history.state;
  if (typeof state === 'object' && state !== null && 'score' in state) {
    history.back();
    return;
  }
  history.replaceState(null, '', location.pathname + location.search);
  tell();
}
