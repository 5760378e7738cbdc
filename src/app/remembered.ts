import { useState } from 'react';

/** Choices about the frame of the app stand under this in the browser's own store, apart from courses. */
const PREFIX = 'polewright.frame.';

/** A switch that is found as it was left when the app is opened again, under a key of its own. */
export function useRememberedSwitch(key: string, atFirst: boolean): readonly [boolean, (next: boolean) => void] {
  const [now, setNow] = useState({ key, isOn: recalled(key) ?? atFirst });
  // Another key is another switch, such as that of a low window.
  if (now.key !== key) setNow({ key, isOn: recalled(key) ?? atFirst });
  return [
    now.key === key ? now.isOn : (recalled(key) ?? atFirst),
    (isOn) => {
      setNow({ key, isOn });
      remember(key, isOn);
    },
  ];
}

/** One of several, found as it was left; the first of them at first. */
export function useRememberedChoice<Choice extends string>(
  key: string,
  choices: readonly [Choice, ...Choice[]],
): readonly [Choice, (next: Choice) => void] {
  const [now, setNow] = useState(() => choices.find((each) => each === recalledText(key)) ?? choices[0]);
  return [
    now,
    (next) => {
      setNow(next);
      rememberText(key, next);
    },
  ];
}

function recalled(key: string): boolean | undefined {
  const kept = recalledText(key);
  return kept === null ? undefined : kept === 'on';
}

function remember(key: string, isOn: boolean): void {
  rememberText(key, isOn ? 'on' : 'off');
}

/** The text kept under a key; null where there is none. */
export function recalledText(key: string): string | null {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    // A browser that keeps nothing: everything is as at first.
    return null;
  }
}

/** Keeps a text under a key, where the browser lets it. */
export function rememberText(key: string, text: string): void {
  try {
    localStorage.setItem(PREFIX + key, text);
  } catch {
    // It holds until the page is left.
  }
}
