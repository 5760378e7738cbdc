import { useCallback, useSyncExternalStore } from 'react';

/** How the panels stand round the arena: on both sides, in one sliding panel, or below it. */
export type Breakpoint = 'wide' | 'middle' | 'narrow';

const NARROW = '(max-width: 640px)';
const MIDDLE = '(max-width: 1100px)';

export function useBreakpoint(): Breakpoint {
  const subscribe = useCallback((listener: () => void) => {
    const queries = [window.matchMedia(NARROW), window.matchMedia(MIDDLE)];
    for (const query of queries) query.addEventListener('change', listener);
    return () => {
      for (const query of queries) query.removeEventListener('change', listener);
    };
  }, []);
  return useSyncExternalStore(subscribe, currentBreakpoint);
}

function currentBreakpoint(): Breakpoint {
  if (window.matchMedia(NARROW).matches) return 'narrow';
  return window.matchMedia(MIDDLE).matches ? 'middle' : 'wide';
}
