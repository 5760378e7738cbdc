/** The words of pointers and touch: tiles, the nudge pad, the menu of what is chosen, and what a drag moves. */
export const handWords = {
  tilesByMouse: 'Click to add, or drag one to its place.',
  tilesByFinger: 'Tap to add, or press and hold, then drag one to its place.',
  tilePutBack: 'Put back: nothing was placed.',
  tileLetGoOutside: 'Let go outside of the arena: nothing was placed.',
} as const;
