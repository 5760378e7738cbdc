import type { Wall } from '../core/constraints/constraint.ts';
import { printAngle } from '../core/measure/angle.ts';
import { printLength } from '../core/measure/length.ts';
import type { LengthUnit, Metres, Radians } from '../core/measure/quantity.ts';
import { normalizeAngle } from '../core/plane/pose.ts';
import { andList, capitalized, counted } from '../core/text/sentence.ts';

/** The stages by name. */
export const STAGE_NAMES = {
  set: 'Set',
  ride: 'Ride',
  check: 'Check',
  post: 'Post',
  change: 'Change',
} as const;

/** The angle between two lines, the short way: 45° for −135° and for 315°; never more than 90°. */
function lieWords(angle: Radians): string {
  const half = Math.abs(normalizeAngle(2 * angle)) / 2;
  return printAngle(half);
}

/** Every sentence of the desk. Lengths and angles come in SI units and are printed here, in the course's unit. */
export const messages = {
  // Where something is.
  fromWall: (off: Metres, wall: Wall, unit: LengthUnit) =>
    off < 0 ? `${printLength(-off, unit)} outside the ${wall} wall` : `${printLength(off, unit)} from the ${wall} wall`,

  // Snaps.
  againstWall: (wall: Wall) => `Against the ${wall} wall`,
  atClearDistance: (off: Metres, wall: Wall, unit: LengthUnit) =>
    `At the clear distance of ${printLength(off, unit)} from the ${wall} wall`,
  onCentreLine: (axis: 'x' | 'y') =>
    axis === 'x' ? "On the arena's cross centre line" : "On the arena's long centre line",
  inLineWith: (name: string, part: 'middle' | 'edge') => `In line with the ${part} of ${name}`,
  midway: (one: string, other: string) => `Half way between ${one} and ${other}`,
  poleInLine: () => 'Poles in one line',
  squareToWalls: (angle: Radians) =>
    Math.abs(Math.sin(2 * angle)) < 1e-6 ? 'Square to the walls' : `At ${lieWords(angle)} to the walls`,
  atAngle: (angle: Radians) => `At ${lieWords(angle)} to the long walls`,
  atAngleTo: (turn: Radians, name: string) => {
    if (Math.abs(Math.sin(turn)) < 1e-6) return `Parallel to ${name}`;
    return Math.abs(Math.cos(turn)) < 1e-6 ? `Square to ${name}` : `At ${lieWords(turn)} to ${name}`;
  },

  // Under way.
  moving: (name: string) => `Moving ${name}`,
  turning: (name: string, by: Radians) => `Turning ${name} by ${printAngle(normalizeAngle(by))}`,
  choosing: () => 'Choosing',
  bending: () => 'Bending the line',
  cancelled: () => 'Cancelled: everything is as it was',

  // Done.
  moved: (name: string, places: readonly string[]) =>
    places.length === 0 ? `Moved ${name}` : `Moved ${name}: ${places.join(', ')}`,
  turned: (name: string, angle: Radians | null, was: Radians | null) =>
    angle === null
      ? `Turned ${name}`
      : `Turned ${name}: heading ${printAngle(normalizeAngle(angle))}${was === null ? '' : ` (was ${printAngle(normalizeAngle(was))})`}`,
  placed: (name: string, places: readonly string[]) => `Placed ${name}: ${places.join(', ')}`,
  placedElsewhere: (name: string, places: readonly string[]) =>
    `Placed ${name} on the nearest free ground: ${places.join(', ')}`,
  erased: (name: string) => `Deleted ${name}`,
  duplicated: (name: string) => `Duplicated ${name}`,
  mirrored: (name: string) => `Mirrored ${name}`,
  chose: (name: string) => `Chose ${name}`,
  choseNothing: () => 'Nothing is chosen',
  bent: () => 'Put a bend into the line',
  endTaken: () => 'The go ends at its last obstacle',
  unbent: () => 'Deleted the bend of the line',
  crossed: (name: string, place: string) => capitalized(`${name}: ${place}`),
  changed: (name: string, label: string, value: string) =>
    capitalized(`${name}: ${label.toLowerCase()} is now ${value}`),
  withWas: (says: string, was: string) => `${says.replace(/\.$/, '')} (was ${was})`,
  changedFrom: (label: string, value: string, was: string) => `${label.toLowerCase()} is now ${value} (was ${was})`,
  gaitFrom: (place: number, gait: string, was: string) => `number ${place} is ridden at a ${gait} (was ${was})`,
  wayTaken: (place: number, title: string) => `number ${place} goes another way now: ${title}`,
  changes: (name: string, changes: readonly string[]) =>
    changes.length === 0 ? `${name}: as it was` : `${name}: ${changes.join('; ')}`,
  exception: (count: number, value: string) => (count === 1 ? `One is ${value}.` : `${count} are ${value}.`),
  takenOut: (count: number) => (count === 1 ? 'One is taken out.' : `${count} are taken out.`),
  lostException: (label: string, hold: string, was: string) =>
    `one ${label.toLowerCase()} of ${hold}, set by hand where the others are ${was}`,
  lostChange: (what: string) => `what was set by hand at ${what}`,
  wouldLose: (losses: readonly string[]) => ({
    says: `This change leaves no place for ${andList(losses)}.`,
    yes: 'Change it anyway',
  }),
  undone: (label: string) => `Undid: ${label}`,
  redone: (label: string) => `Redid: ${label}`,
  nothingToUndo: () => 'There is nothing to undo',
  nothingToRedo: () => 'There is nothing to redo',
  opened: (title: string) => `Opened ${title === '' ? 'an untitled course' : title}`,
  stage: (stage: keyof typeof STAGE_NAMES) => `Stage: ${STAGE_NAMES[stage]}`,
  ready: () => 'Ready',

  // What is kept.
  keepOff: (name: string, off: string, wall: Wall) => `Keep ${name} ${off} off the ${wall} wall`,
  keepAlong: (name: string, wall: Wall) => `Keep ${name} along the ${wall} wall`,
  keepSquareTo: (name: string, wall: Wall) => `Keep ${name} square to the ${wall} wall`,
  keepAtAngle: (name: string, angle: string, wall: Wall) => `Keep ${name} at ${angle} to the ${wall} wall`,
  keepApart: (name: string, far: string) => `Keep ${name} ${far} apart`,
  keepParallel: (name: string) => `Keep ${name} parallel`,
  keepInLine: (name: string) => `Keep ${name} in one line`,
  keepLevel: (name: string) => `Keep the middles of ${name} level`,
  keepSquare: (name: string) => `Keep ${name} square to each other`,
  keepTurned: (name: string, angle: string) => `Keep ${name} at ${angle} to each other`,
  bringsThere: (says: string) => `${says} Moves them there.`,
  keepEqual: (gap: string) => `Keep the two gaps between them equal (${gap} now)`,
  keeps: (says: string) => says.replace(/^Keep /, 'From now on it keeps: '),
  nowHeld: (title: string) => `${title}: kept from now on`,
  onlyMeasured: (title: string) => `${title}: only measured from now on`,
  dropped: (title: string) => `${title}: no longer kept`,
  conflict: () => 'These cannot all be kept. Drop one of them, or leave everything as it was.',
  ownName: () => 'Own obstacle',
  gathered: (count: number) => `Made one obstacle of ${counted(count, 'piece')}`,
  pinned: (name: string) => capitalized(`${name}: pinned, it stays while others move`),
  unpinned: (name: string) => capitalized(`${name}: free to move again`),
  leftAsItWas: () => 'Left everything as it was',
  stoppedBy: (says: string) => `Held: ${says.replace(/\.$/, '')}`,
  stoppedShort: (moved: string, stops: readonly string[]) =>
    [moved, ...stops.map((says) => `It stops there. ${says}.`)].join(' '),
  heldFirmly: () => 'Held firmly.',
  freedom: (can: {
    readonly along: boolean;
    readonly across: boolean;
    readonly turns: boolean;
    readonly inside: boolean;
  }) => {
    const slides = can.along && can.across ? 'slide' : can.along ? 'slide along the arena' : 'slide across the arena';
    const ways = [...(can.along || can.across ? [slides] : []), ...(can.turns ? ['turn'] : [])];
    const moves = ways.length === 0 ? 'Held in its place' : `Can still ${ways.join(' and ')}`;
    return `${moves}; ${can.inside ? 'its pieces can still shift among themselves' : 'keeps its shape'}.`;
  },

  // The tape in the hand.
  tapeInHand: () => 'The tape is ready: press one thing, then another. Escape puts it away.',
  noTapeYet: () => 'The tape is still on its way. Take it up again in a moment.',
  pressOtherEnd: () => 'Press the other end.',
  tapeHeld: (name: string) => `The tape begins at ${name}. Press the other end.`,
  tapeAway: () => 'Put the tape away',
  measured: (
    text: string,
    about: { readonly names: readonly [string, string]; readonly angle: string | null; readonly isInside: boolean },
  ) => {
    const inside = about.isInside ? ', inside to inside' : '';
    const lie = about.angle === '0°' ? 'parallel' : about.angle === '90°' ? 'square to each other' : null;
    const angle = about.angle === null ? '' : `, ${lie ?? `${about.angle} between them`}`;
    return `${text} from ${about.names[0]} to ${about.names[1]}${inside}${angle}`;
  },

  // Refused.
  crossesOnly: () => 'Where the line crosses moves along the pole only: use the other arrow keys.',
  nothingToMeasure: (title: string) =>
    `${title}: as the pieces lie the tape runs along one of them, so there is nothing to keep. Bring them side by side first.`,
  noSuchMeasure: () => 'That is no longer kept here.',
  lessThanNothing: (title: string) => `${title} cannot be less than zero.`,
  turnOne: () => 'Choose one piece, or whole obstacles, to turn.',
  pieceIsPinned: (name: string) => capitalized(`${name} is pinned. Press F to free it, then move it.`),
  cannotMove: (name: string) =>
    capitalized(`${name} does not move: a pinned piece or a kept measure holds it in place.`),
  staysThere: (name: string) => capitalized(`${name} cannot be deleted`),
  noSuchKind: (kind: string) => `There is no obstacle kind “${kind}”.`,
  noSuchObstacle: (id: string) => `There is no obstacle “${id}” in this layout.`,
  noSuchParam: (param: string, name: string) => capitalized(`${name} has no measure called “${param}”.`),
  outOfBand: (label: string, asked: string, least: string, most: string) =>
    `${label} must lie between ${least} and ${most}; ${asked} does not.`,
  notChoice: (label: string, text: string, options: readonly string[]) =>
    `${label} is one of ${options.join(', ')}; “${text.trim()}” is none of them.`,
  nearest: (why: string, nearest: readonly string[]) => `${why} The nearest that works: ${nearest.join(', ')}.`,
} as const;

/** Labels of the steps in the history. */
export const labels = {
  move: (name: string) => `Move ${name}`,
  arena: () => 'Change the arena',
  wayIn: () => 'Move the way in',
  turn: (name: string) => `Turn ${name}`,
  place: (name: string) => `Place ${name}`,
  erase: (name: string) => `Delete ${name}`,
  duplicate: (name: string) => `Duplicate ${name}`,
  mirror: (name: string) => `Mirror ${name}`,
  pin: (name: string) => `Pin ${name}`,
  unpin: (name: string) => `Free ${name}`,
  gather: () => 'Make one obstacle',
  hold: (title: string) => `Change what is kept: ${title.toLowerCase()}`,
  measureOnly: (title: string) => `Only measure: ${title.toLowerCase()}`,
  drop: (title: string) => `Drop: ${title.toLowerCase()}`,
  keep: (title: string) => `Keep: ${title.toLowerCase()}`,
  change: (name: string, label: string) => `Change ${label.toLowerCase()} of ${name}`,
  bend: () => 'Bend the line',
  unbend: () => 'Delete a bend',
} as const;
