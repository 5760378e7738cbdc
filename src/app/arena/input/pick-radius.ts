import { useCallback, useSyncExternalStore } from 'react';

/** How far from a thing a pointer still is on it, pixels. */
export const PICK_RADIUS = { mouse: 9, finger: 20 } as const;

const COARSE = '(pointer: coarse)';

/** The pick radius of the main pointer of this device: handles are drawn for it. */
export function usePickRadius(): number {
  const subscribe = useCallback((listener: () => void) => {
    const query = window.matchMedia(COARSE);
    query.addEventListener('change', listener);
    return () => query.removeEventListener('change', listener);
  }, []);
  return useSyncExternalStore(subscribe, () =>
    window.matchMedia(COARSE).matches ? PICK_RADIUS.finger : PICK_RADIUS.mouse,
  );
}
