/** The words of pointers and touch: tiles, the nudge pad, the menu of what is chosen, and what a drag moves. */
export const handWords = {
  tilesByMouse: 'Click to add, or drag one to its place.',
  tilesByFinger: 'Tap to add, or press and hold, then drag one to its place.',
  tilePutBack: 'Put back: nothing was placed.',
  tileLetGoOutside: 'Let go outside of the arena: nothing was placed.',

  movesAlong: (count: number, { areAll, arePoles }: { readonly areAll: boolean; readonly arePoles: boolean }) => {
    const what = arePoles ? 'poles' : 'pieces';
    return `Moves ${areAll ? 'all ' : ''}${count} ${what}: what is kept between them stays`;
  },
  movesAlone: 'Just this one moves',
  justThisPole: 'Just this pole',
  justThisPiece: 'Just this piece',
  againAlone: 'Move just this one instead',
  nowMeasures: (name: string, now: string, was: string) => `${name}: now ${now} (was ${was})`,
  noLongerKept: (name: string) => `${name}: no longer kept`,
  movedAlone: (moved: string, gaveWay: readonly string[]) => {
    if (gaveWay.length === 0) return moved;
    const more = gaveWay.length > 4 ? [`and ${gaveWay.length - 3} more`] : [];
    return `${moved}. Just this one: ${[...gaveWay.slice(0, more.length === 0 ? 4 : 3), ...more].join('; ')}`;
  },
  aloneOn: 'Just this one moves now; what holds it to others gives way',
  aloneOff: 'What is kept holds again: others move along',

  snapsOn: 'Snapping is on',
  snapsOff: 'Snapping is off',
  snap: 'Snap',
  snapTitle: 'Snap to walls, poles and lines (S)',

  pad: 'Nudge',
  openPad: 'Nudge pad',
  shutPad: 'Close the nudge pad',
  stepSize: 'Size of a step',
  nudge: (way: 'up' | 'down' | 'left' | 'right', far: string) => `Move ${far} ${way}`,
  turnLeft: (by: string) => `Turn ${by} to the left`,
  turnRight: (by: string) => `Turn ${by} to the right`,

  menu: 'What is chosen',
  menuTurnLeft: 'Turn left by 15°',
  menuTurnRight: 'Turn right by 15°',
  menuMirror: 'Mirror',
  menuPin: 'Pin it here',
  menuFree: 'Free it',
  menuWithOthers: 'Move others along again',
  menuWhole: 'Whole obstacle',
  menuPieces: 'One of its pieces',
  menuMeasure: 'Measure from it',

  arenaIsNow: (size: string) => `The arena is now ${size}`,
  wayInIsNow: (place: string) => `The way in is now ${place}`,
  wayInPlace: (far: string, wall: string) => `${far} along the ${wall} wall`,
  misfits: (names: string, isOne: boolean) => `${names} no longer ${isOne ? 'fits' : 'fit'}`,
  misfitsTitle: 'Does not fit in this arena',
  showInCheck: 'Show in Check',
} as const;
