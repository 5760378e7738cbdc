import { useCallback, useSyncExternalStore } from 'react';

/** How far from a thing a pointer still is on it, pixels. */
export const REACH = { mouse: 9, finger: 20 } as const;

const COARSE = '(pointer: coarse)';

/** The reach of the pointer that this device has first of all: handles are drawn for it. */
export function useReach(): number {
  const listen = useCallback((heard: () => void) => {
    const wish = window.matchMedia(COARSE);
    wish.addEventListener('change', heard);
    return () => wish.removeEventListener('change', heard);
  }, []);
  return useSyncExternalStore(listen, () => (window.matchMedia(COARSE).matches ? REACH.finger : REACH.mouse));
}
