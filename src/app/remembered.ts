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

function recalled(key: string): boolean | undefined {
  try {
    const kept = localStorage.getItem(PREFIX + key);
    return kept === null ? undefined : kept === 'on';
  } catch {
    // A browser that keeps nothing: the switch is as at first.
    return undefined;
  }
}

function remember(key: string, isOn: boolean): void {
  try {
    localStorage.setItem(PREFIX + key, isOn ? 'on' : 'off');
  } catch {
    // It holds until the page is left.
  }
}
