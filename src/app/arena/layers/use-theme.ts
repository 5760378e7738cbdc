import { useSyncExternalStore } from 'react';
import { laterPart, want } from '../../later-part.ts';
import { DARK, LIGHT, type Theme } from '../painters/inks.ts';
import { haveLetters, loadLetters } from '../painters/typeface.ts';

/** The letters are fetched after the first picture, which is drawn in the browser's own. */
const LETTERS_PART = laterPart(() => import('../../styles/typeface.css'));

const DARK_SCHEME = '(prefers-color-scheme: dark)';

/** Other objects once the letters have come: what is painted from a theme is then painted again. */
let themes: { readonly light: Theme; readonly dark: Theme } = { light: LIGHT, dark: DARK };
let isLettered = false;

function subscribe(listener: () => void): () => void {
  const query = window.matchMedia(DARK_SCHEME);
  const lettersCame = () => {
    if (!isLettered && LETTERS_PART.now() !== undefined && haveLetters()) {
      isLettered = true;
      themes = { light: { ...LIGHT }, dark: { ...DARK } };
    }
    listener();
  };
  query.addEventListener('change', listener);
  document.fonts.addEventListener('loadingdone', lettersCame);
  const stopWaiting = LETTERS_PART.subscribe(loadLetters);
  if (LETTERS_PART.now() === undefined) want(LETTERS_PART);
  else loadLetters();
  return () => {
    stopWaiting();
    query.removeEventListener('change', listener);
    document.fonts.removeEventListener('loadingdone', lettersCame);
  };
}

function currentTheme(): Theme {
  return window.matchMedia(DARK_SCHEME).matches ? themes.dark : themes.light;
}

/** The colours for the light or dark theme that the person's system asks for. */
export function useTheme(): Theme {
  return useSyncExternalStore(subscribe, currentTheme);
}
