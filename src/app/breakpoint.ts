import { useCallback, useSyncExternalStore } from 'react';

/** How the panels stand round the arena: on both sides, in one that folds beside it, or in one below it. */
export type Breakpoint = 'wide' | 'middle' | 'narrow';

/** A phone held upright; on its side there is more room beside the arena than below it. */
const NARROW = '(max-width: 479px), (max-width: 640px) and (min-height: 481px)';
const MIDDLE = '(max-width: 1100px)';
/** Too little height for the arena and the strip: a phone on its side, or a laptop's window at 200 %. */
const LOW = '(max-height: 560px)';

export function useBreakpoint(): Breakpoint {
  const isNarrow = useMedia(NARROW);
  const isMiddle = useMedia(MIDDLE);
  return isNarrow ? 'narrow' : isMiddle ? 'middle' : 'wide';
}

export function useIsLow(): boolean {
  return useMedia(LOW);
}

function useMedia(query: string): boolean {
  const subscribe = useCallback(
    (listener: () => void) => {
      const list = window.matchMedia(query);
      list.addEventListener('change', listener);
      return () => list.removeEventListener('change', listener);
    },
    [query],
  );
  return useSyncExternalStore(subscribe, () => window.matchMedia(query).matches);
}
