import type { KeyPress } from '../../../desk/input.ts';

/** In a turned picture +x runs up the screen and +y to the left of it. */
const TURNED: Readonly<Record<string, string>> = {
  ArrowUp: 'ArrowRight',
  ArrowRight: 'ArrowDown',
  ArrowDown: 'ArrowLeft',
  ArrowLeft: 'ArrowUp',
};

/** An arrow key as the ground has it, so that what is chosen goes the way the arrow points on the screen. */
export function asSeen(stroke: KeyPress, turned: boolean): KeyPress {
  const key = turned ? TURNED[stroke.key] : undefined;
  return key === undefined ? stroke : { ...stroke, key };
}
