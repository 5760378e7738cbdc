import { useCallback, useSyncExternalStore } from 'react';
import { DARK, LIGHT, type Theme } from '../painters/inks.ts';

const DARK_SCHEME = '(prefers-color-scheme: dark)';

/** The colours for the light or dark theme that the person's system asks for. */
export function useTheme(): Theme {
  const subscribe = useCallback((listener: () => void) => {
    const query = window.matchMedia(DARK_SCHEME);
    query.addEventListener('change', listener);
    return () => query.removeEventListener('change', listener);
  }, []);
  return useSyncExternalStore(subscribe, () => window.matchMedia(DARK_SCHEME).matches) ? DARK : LIGHT;
}
