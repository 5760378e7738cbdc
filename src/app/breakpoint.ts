import { useCallback, useSyncExternalStore } from 'react';

/** How the panels stand round the arena: on both sides, in one sliding panel, or below it. */
export type Arrangement = 'wide' | 'middle' | 'narrow';

const NARROW = '(max-width: 640px)';
const MIDDLE = '(max-width: 1100px)';

export function useArrangement(): Arrangement {
  const listen = useCallback((heard: () => void) => {
    const wishes = [window.matchMedia(NARROW), window.matchMedia(MIDDLE)];
    for (const wish of wishes) wish.addEventListener('change', heard);
    return () => {
      for (const wish of wishes) wish.removeEventListener('change', heard);
    };
  }, []);
  return useSyncExternalStore(listen, arrangement);
}

function arrangement(): Arrangement {
  if (window.matchMedia(NARROW).matches) return 'narrow';
  return window.matchMedia(MIDDLE).matches ? 'middle' : 'wide';
}
