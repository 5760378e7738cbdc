import type { KeyPress } from '../desk/input.ts';

/** A key event of React or the window as the desk takes it. */
export function keyPressOf(event: {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}): KeyPress {
  return { key: event.key, mod: event.ctrlKey || event.metaKey, shift: event.shiftKey, alt: event.altKey };
}
