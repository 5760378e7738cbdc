import type { LengthUnit } from '../../core/measure/quantity.ts';
import { labels, STAGE_NAMES } from '../../words/desk.ts';
import { keyWords } from '../../words/keys.ts';
import { terms } from '../../words/terms.ts';
import type { Desk } from '../desk.ts';
import { addBend, approachSamples } from '../gestures/bend.ts';
import { crossingsOn, isRiddenOnOneLine, obstacleOfChoice } from '../gestures/crossing.ts';
import type { KeyPress, Stage } from '../input.ts';
import { bendKey, crossKey, goOrder } from '../selection/selection.ts';
import { NUDGE_STEPS } from './nudge-steps.ts';
import { addNext, chooseAdjacent, replaceLast } from './traversal.ts';

/** What a shortcut does at the desk; false when the key press means nothing just now. */
type ShortcutAction = (desk: Desk, pressed: KeyPress) => boolean;

/** The keys that do what a gesture or a button does. */
export interface Shortcut {
  readonly keyPresses: readonly KeyPress[];
  /** The keys as a person reads them. */
  readonly shown: string;
  readonly says: string;
  readonly run: ShortcutAction;
}

function keyPress(key: string, modifiers: Partial<Omit<KeyPress, 'key'>> = {}): KeyPress {
  return { key, mod: false, shift: false, alt: false, ...modifiers };
}

/** How far an arrow moves, in metres: a fine step, and with shift a coarse one. */
function nudgeSteps(unit: LengthUnit): { readonly fine: number; readonly coarse: number } {
  const { small, middle, large } = NUDGE_STEPS[unit];
  return { fine: small.far, coarse: unit === 'ft' ? large.far : middle.far };
}

const DEGREE = Math.PI / 180;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A command that needs something chosen. */
function withChosen(does: (desk: Desk, pressed: KeyPress) => void): ShortcutAction {
  return (desk, pressed) => {
    if (desk.state().chosen.length === 0) return false;
    does(desk, pressed);
    return true;
  };
}

/** A command that means something at any time. */
function always(does: (desk: Desk, pressed: KeyPress) => void): ShortcutAction {
  return (desk, pressed) => {
    does(desk, pressed);
    return true;
  };
}

function enterPieces(desk: Desk): boolean {
  const { survey, chosen } = desk.state();
  const [only, more] = chosen;
  const piece = survey.pieces.find((each) => each.obstacle === only);
  if (piece === undefined || more !== undefined) return false;
  desk.choose([piece.key]);
  return true;
}

function keepSuggestion(desk: Desk): boolean {
  if (desk.state().suggestion === null) return false;
  desk.keep();
  return true;
}

/** Out of a gesture, out of a piece, out of the obstacle. */
function leave(desk: Desk): boolean {
  if (desk.cancel()) return true;
  const { survey, chosen, tape: measuring } = desk.state();
  if (measuring !== null) {
    desk.measure();
    return true;
  }
  const [only] = chosen;
  if (only === undefined) return false;
  const meant = obstacleOfChoice(survey, chosen);
  desk.choose(meant === undefined || meant === only ? [] : [meant]);
  return true;
}

/** Pulls a bend into the middle of the way to the chosen obstacle. */
function bendLine(desk: Desk): boolean {
  const { survey, chosen, stage } = desk.state();
  const index = survey.layout.ride.legs.findIndex((leg) => chosen.includes(leg.obstacle));
  const leg = survey.layout.ride.legs[index];
  const samples = approachSamples(survey, index);
  const middle = samples[Math.floor(samples.length / 2)];
  if (stage !== 'ride' || leg === undefined || middle === undefined) return false;
  desk.edit(labels.bend(), (course) => addBend(course, { leg: leg.id, index: leg.bends.length }, middle));
  desk.choose([bendKey(leg.id, leg.bends.length)]);
  return true;
}

/** Chooses the line over the chosen obstacle. */
function chooseCrossing(desk: Desk): boolean {
  const { survey, chosen, stage } = desk.state();
  const meant = obstacleOfChoice(survey, chosen);
  const leg = survey.layout.ride.legs.find(
    (each) => each.obstacle === meant && crossingsOn(survey, each.id).length > 0,
  );
  if (stage !== 'ride' || leg === undefined) return false;
  desk.choose([crossKey(leg.id, isRiddenOnOneLine(survey, leg.id) ? 'all' : 0)]);
  return true;
}

const STAGES: readonly Stage[] = ['set', 'ride', 'check', 'post', 'change'];

/** Every stroke of the desk, in the order in which help lists them. */
export const SHORTCUTS: readonly Shortcut[] = [
  {
    keyPresses: [keyPress('Tab')],
    shown: 'Tab',
    says: keyWords.chooseNextObstacleOrder,
    run: (desk) => chooseAdjacent(desk, 1),
  },
  {
    keyPresses: [keyPress('Tab', { shift: true })],
    shown: 'Shift + Tab',
    says: keyWords.chooseOneBefore,
    run: (desk) => chooseAdjacent(desk, -1),
  },
  {
    keyPresses: [keyPress('n')],
    shown: 'N',
    says: keyWords.addNextObstacleWhat,
    run: addNext,
  },
  {
    keyPresses: [keyPress('n', { shift: true })],
    shown: 'Shift + N',
    says: keyWords.putNextPiecePlace,
    run: replaceLast,
  },
  {
    keyPresses: [keyPress('a', { mod: true })],
    shown: 'Ctrl + A',
    says: keyWords.chooseEveryObstacle,
    run: always((desk) => desk.choose(goOrder(desk.state().course))),
  },
  {
    keyPresses: [keyPress('Enter')],
    shown: 'Enter',
    says: keyWords.goIntoPiecesChosen,
    run: enterPieces,
  },
  {
    keyPresses: [keyPress('Escape')],
    shown: 'Escape',
    says: keyWords.letGoWhatUnder,
    run: leave,
  },
  {
    keyPresses: Object.keys(ARROWS).map((key) => keyPress(key)),
    shown: keyWords.arrows,
    says: keyWords.moveWhatChosenBy,
    run: withChosen((desk, { key }) => nudge(desk, key, 'fine')),
  },
  {
    keyPresses: Object.keys(ARROWS).map((key) => keyPress(key, { shift: true })),
    shown: 'Shift + arrows',
    says: keyWords.moveWhatChosenBy1,
    run: withChosen((desk, { key }) => nudge(desk, key, 'coarse')),
  },
  {
    keyPresses: [keyPress('r')],
    shown: 'R',
    says: keyWords.turnBy15Left,
    run: withChosen((desk) => desk.turn(15 * DEGREE)),
  },
  {
    keyPresses: [keyPress('r', { shift: true })],
    shown: 'Shift + R',
    says: keyWords.turnBy15Right,
    run: withChosen((desk) => desk.turn(-15 * DEGREE)),
  },
  {
    keyPresses: [keyPress('r', { alt: true }), keyPress('[')],
    shown: 'Alt + R or [',
    says: keyWords.turnBy1Left,
    run: withChosen((desk) => desk.turn(DEGREE)),
  },
  {
    keyPresses: [keyPress('r', { alt: true, shift: true }), keyPress(']')],
    shown: 'Alt + Shift + R or ]',
    says: keyWords.turnBy1Right,
    run: withChosen((desk) => desk.turn(-DEGREE)),
  },
  { keyPresses: [keyPress('m')], shown: 'M', says: keyWords.mirror, run: withChosen((desk) => desk.mirror()) },
  {
    keyPresses: [keyPress('d', { mod: true })],
    shown: 'Ctrl + D',
    says: keyWords.duplicate,
    run: withChosen((desk) => desk.duplicate()),
  },
  {
    keyPresses: [keyPress('Delete'), keyPress('Backspace')],
    shown: 'Delete',
    says: keyWords.delete,
    run: withChosen((desk) => desk.erase()),
  },
  {
    keyPresses: [keyPress('f')],
    shown: 'F',
    says: keyWords.pin,
    run: (desk) => desk.togglePinned(),
  },
  {
    keyPresses: [keyPress('j')],
    shown: 'J',
    says: keyWords.justThisPole,
    run: (desk) => desk.toggleAlone(),
  },
  {
    keyPresses: [keyPress('s')],
    shown: 'S',
    says: keyWords.snapping,
    run: always((desk) => desk.toggleSnaps()),
  },
  {
    keyPresses: [keyPress('t')],
    shown: 'T',
    says: keyWords.takeTapeMeasureBetween,
    run: always((desk) => desk.measure()),
  },
  {
    keyPresses: [keyPress('k')],
    shown: 'K',
    says: keyWords.keepWhatJustOffered,
    run: keepSuggestion,
  },
  {
    keyPresses: [keyPress('b')],
    shown: 'B',
    says: keyWords.rideStagePullBend,
    run: bendLine,
  },
  {
    keyPresses: [keyPress('c')],
    shown: 'C',
    says: keyWords.rideStageTakeHold,
    run: chooseCrossing,
  },
  {
    keyPresses: [keyPress('z', { mod: true })],
    shown: 'Ctrl + Z',
    says: terms.undo,
    run: always((desk) => desk.undo()),
  },
  {
    keyPresses: [keyPress('z', { mod: true, shift: true }), keyPress('y', { mod: true })],
    shown: keyWords.ctrlShiftZOr,
    says: terms.redo,
    run: always((desk) => desk.redo()),
  },
  ...STAGES.map((stage, index) => ({
    keyPresses: [keyPress(String(index + 1))],
    shown: String(index + 1),
    says: keyWords.goStage(STAGE_NAMES[stage]),
    run: always((desk: Desk) => desk.switchStage(stage)),
  })),
];

function nudge(desk: Desk, key: string, size: 'fine' | 'coarse'): void {
  const step = nudgeSteps(desk.state().course.unit)[size];
  const [x, y] = ARROWS[key] ?? [0, 0];
  desk.nudge(x * step, y * step);
}

function isSameKeyPress(a: KeyPress, b: KeyPress): boolean {
  // Letters count with and without shift; shift itself is compared on its own.
  const key = (each: KeyPress) => (each.key.length === 1 ? each.key.toLowerCase() : each.key);
  return key(a) === key(b) && a.mod === b.mod && a.shift === b.shift && a.alt === b.alt;
}

/** Does what the key press means at the desk; false when it means nothing here. */
export function runShortcut(desk: Desk, keyPress: KeyPress): boolean {
  return (
    SHORTCUTS.find((shortcut) => shortcut.keyPresses.some((each) => isSameKeyPress(each, keyPress)))?.run(
      desk,
      keyPress,
    ) ?? false
  );
}
