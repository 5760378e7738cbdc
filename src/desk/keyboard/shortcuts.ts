import { FOOT, INCH, type LengthUnit } from '../../core/measure/quantity.ts';
import type { Desk, Stage, Stroke } from '../desk.ts';
import { labels, STAGE_NAMES } from '../desk-words.ts';
import { approachSamples, bendAdded } from '../gestures/bend.ts';
import { crossingsOn, goTogether, obstacleMeant } from '../gestures/crossing.ts';
import { bendKey, crossKey, walkingOrder } from '../selection/selection.ts';
import { addNext, addOther, walk } from './traversal.ts';

/** The keyboard twin of a gesture or a button. `does` answers false when the stroke means nothing just now. */
export interface KeyTwin {
  readonly strokes: readonly Stroke[];
  /** The keys as a person reads them. */
  readonly shown: string;
  readonly says: string;
  does(desk: Desk, stroke: Stroke): boolean;
}

function stroke(key: string, modifiers: Partial<Omit<Stroke, 'key'>> = {}): Stroke {
  return { key, mod: false, shift: false, alt: false, ...modifiers };
}

/** How far an arrow moves, in metres: a fine step, and with shift a coarse one. */
function nudgeSteps(unit: LengthUnit): { readonly fine: number; readonly coarse: number } {
  return unit === 'ft' ? { fine: INCH, coarse: FOOT } : { fine: 0.01, coarse: 0.1 };
}

const DEGREE = Math.PI / 180;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A verb that needs something chosen. */
function withChosen(does: (desk: Desk, stroke: Stroke) => void): KeyTwin['does'] {
  return (desk, pressed) => {
    if (desk.state().chosen.length === 0) return false;
    does(desk, pressed);
    return true;
  };
}

function always(does: (desk: Desk, stroke: Stroke) => void): KeyTwin['does'] {
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

function keepOffered(desk: Desk): boolean {
  if (desk.state().offer === null) return false;
  desk.keep();
  return true;
}

/** Out of a gesture, out of a piece, out of the obstacle. */
function leave(desk: Desk): boolean {
  if (desk.cancel()) return true;
  const { survey, chosen, measuring } = desk.state();
  if (measuring !== null) {
    desk.measure();
    return true;
  }
  const [only] = chosen;
  if (only === undefined) return false;
  const meant = obstacleMeant(survey, chosen);
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
  desk.edit(labels.bend(), (course) => bendAdded(course, { leg: leg.id, index: leg.bends.length }, middle));
  desk.choose([bendKey(leg.id, leg.bends.length)]);
  return true;
}

/** Takes hold of the line over the chosen obstacle. */
function takeCrossing(desk: Desk): boolean {
  const { survey, chosen, stage } = desk.state();
  const meant = obstacleMeant(survey, chosen);
  const leg = survey.layout.ride.legs.find(
    (each) => each.obstacle === meant && crossingsOn(survey, each.id).length > 0,
  );
  if (stage !== 'ride' || leg === undefined) return false;
  desk.choose([crossKey(leg.id, goTogether(survey, leg.id) ? 'all' : 0)]);
  return true;
}

const STAGES: readonly Stage[] = ['set', 'ride', 'check', 'post', 'reset'];

/** Every stroke of the desk, in the order in which help lists them. */
export const KEYS: readonly KeyTwin[] = [
  {
    strokes: [stroke('Tab')],
    shown: 'Tab',
    says: 'Choose the next obstacle in the order of the go; after the last, leave the arena',
    does: (desk) => walk(desk, 1),
  },
  {
    strokes: [stroke('Tab', { shift: true })],
    shown: 'Shift + Tab',
    says: 'Choose the one before',
    does: (desk) => walk(desk, -1),
  },
  {
    strokes: [stroke('n')],
    shown: 'N',
    says: 'Add the next obstacle to what is chosen; while a piece is chosen, the next piece',
    does: addNext,
  },
  {
    strokes: [stroke('n', { shift: true })],
    shown: 'Shift + N',
    says: 'Put the next piece in the place of the one added last',
    does: addOther,
  },
  {
    strokes: [stroke('a', { mod: true })],
    shown: 'Ctrl + A',
    says: 'Choose every obstacle',
    does: always((desk) => desk.choose(walkingOrder(desk.state().course))),
  },
  { strokes: [stroke('Enter')], shown: 'Enter', says: 'Go into the pieces of the chosen obstacle', does: enterPieces },
  {
    strokes: [stroke('Escape')],
    shown: 'Escape',
    says: 'Let go of what is under way, then of the tape, of the piece, of the obstacle',
    does: leave,
  },
  {
    strokes: Object.keys(ARROWS).map((key) => stroke(key)),
    shown: 'Arrows',
    says: 'Move what is chosen by 1 in (1 cm in a metric course)',
    does: withChosen((desk, { key }) => nudge(desk, key, 'fine')),
  },
  {
    strokes: Object.keys(ARROWS).map((key) => stroke(key, { shift: true })),
    shown: 'Shift + arrows',
    says: 'Move what is chosen by 1 ft (10 cm in a metric course)',
    does: withChosen((desk, { key }) => nudge(desk, key, 'coarse')),
  },
  {
    strokes: [stroke('r')],
    shown: 'R',
    says: 'Turn by 15° to the left',
    does: withChosen((desk) => desk.turn(15 * DEGREE)),
  },
  {
    strokes: [stroke('r', { shift: true })],
    shown: 'Shift + R',
    says: 'Turn by 15° to the right',
    does: withChosen((desk) => desk.turn(-15 * DEGREE)),
  },
  {
    strokes: [stroke('r', { alt: true }), stroke('[')],
    shown: 'Alt + R or [',
    says: 'Turn by 1° to the left',
    does: withChosen((desk) => desk.turn(DEGREE)),
  },
  {
    strokes: [stroke('r', { alt: true, shift: true }), stroke(']')],
    shown: 'Alt + Shift + R or ]',
    says: 'Turn by 1° to the right',
    does: withChosen((desk) => desk.turn(-DEGREE)),
  },
  { strokes: [stroke('m')], shown: 'M', says: 'Mirror', does: withChosen((desk) => desk.mirror()) },
  {
    strokes: [stroke('d', { mod: true })],
    shown: 'Ctrl + D',
    says: 'Copy to the nearest free ground',
    does: withChosen((desk) => desk.duplicate()),
  },
  {
    strokes: [stroke('Delete'), stroke('Backspace')],
    shown: 'Delete',
    says: 'Take away what is chosen',
    does: withChosen((desk) => desk.erase()),
  },
  {
    strokes: [stroke('f')],
    shown: 'F',
    says: 'Fix what is chosen where it is, or free it',
    does: (desk) => desk.fix(),
  },
  {
    strokes: [stroke('t')],
    shown: 'T',
    says: 'Take the tape: measure between two things, at once when two are chosen; again puts it away',
    does: always((desk) => desk.measure()),
  },
  {
    strokes: [stroke('k')],
    shown: 'K',
    says: 'Keep what was just offered: a snap, or what the tape reads',
    does: keepOffered,
  },
  {
    strokes: [stroke('b')],
    shown: 'B',
    says: 'In the Ride stage: pull a bend into the way to the chosen obstacle; arrows then move it',
    does: bendLine,
  },
  {
    strokes: [stroke('c')],
    shown: 'C',
    says: 'In the Ride stage: take hold of where the line crosses the poles of the chosen obstacle; arrows move it along them, Tab takes the next pole',
    does: takeCrossing,
  },
  {
    strokes: [stroke('z', { mod: true })],
    shown: 'Ctrl + Z',
    says: 'Undo',
    does: always((desk) => desk.undo()),
  },
  {
    strokes: [stroke('z', { mod: true, shift: true }), stroke('y', { mod: true })],
    shown: 'Ctrl + Shift + Z or Ctrl + Y',
    says: 'Redo',
    does: always((desk) => desk.redo()),
  },
  ...STAGES.map((stage, index) => ({
    strokes: [stroke(String(index + 1))],
    shown: String(index + 1),
    says: `Go to the ${STAGE_NAMES[stage]} stage`,
    does: always((desk: Desk) => desk.go(stage)),
  })),
];

function nudge(desk: Desk, key: string, size: 'fine' | 'coarse'): void {
  const step = nudgeSteps(desk.state().course.unit)[size];
  const [x, y] = ARROWS[key] ?? [0, 0];
  desk.nudge(x * step, y * step);
}

function same(a: Stroke, b: Stroke): boolean {
  // Letters count whatever the shift key makes of them; shift itself is compared on its own.
  const key = (each: Stroke) => (each.key.length === 1 ? each.key.toLowerCase() : each.key);
  return key(a) === key(b) && a.mod === b.mod && a.shift === b.shift && a.alt === b.alt;
}

/** Does what the stroke means on the desk; false when it means nothing here. */
export function pressed(desk: Desk, stroke: Stroke): boolean {
  return KEYS.find((twin) => twin.strokes.some((each) => same(each, stroke)))?.does(desk, stroke) ?? false;
}
