import { pieceWords } from '../../checks/findings/thing-words.ts';
import type { Grip, ObservationKind } from '../../constraints/constraint.ts';
import { printAngle } from '../../measure/angle.ts';
import { printLength } from '../../measure/length.ts';
import { INCH, type LengthUnit, type Metres } from '../../measure/quantity.ts';
import type { Point } from '../../plane/point.ts';
import type { Survey } from '../../survey.ts';
import { isSmall } from '../observables.ts';
import type { Observable } from '../setout.ts';
import type { AdjustedPiece } from './adjust.ts';
import { pieceNamed } from './adjust-equations.ts';
import type { MoveNames } from './mends-words.ts';

/** Points of the compass, from the east counter-clockwise, as the arena has them: +x is east. */
const COMPASS = ['E', 'NE', 'N', 'NW', 'W', 'SW', 'S', 'SE'] as const;

/** To the quarter inch or the half centimetre: what a tape shows. */
export function tapeWords(value: Metres, unit: LengthUnit): string {
  if (unit === 'ft') return printLength(value, unit);
  const half = Math.round(Math.abs(value) * 200) / 2;
  return `${value < 0 && half > 0 ? '−' : ''}${half} cm`;
}

/** A standard error: to an eighth of an inch, or to the millimetre. */
export function errorWords(sigma: Metres, unit: LengthUnit): string {
  return unit === 'ft' ? `±${(sigma / INCH).toFixed(1)} in` : `±${Math.round(sigma * 1000)} mm`;
}

/** How far a point lies off its place, and which way: "2½" NE"; "there" where a tape would not show it. */
export function offWords(off: Point, unit: LengthUnit): string {
  const far = Math.hypot(off.x, off.y);
  const printed = tapeWords(far, unit);
  if (printed === tapeWords(0, unit)) return 'there';
  const eighth = Math.round((Math.atan2(off.y, off.x) / Math.PI) * 4);
  return `${printed} ${COMPASS[((eighth % 8) + 8) % 8]}`;
}

/** How far the ends of an adjusted piece lie off their places, `[at 0, at 1]`; of a small thing its middle alone. */
export function endsOff(survey: Survey, { key, plan, pose }: AdjustedPiece): readonly Point[] {
  const piece = pieceNamed(survey, key);
  const shares = isSmall(piece) ? [0] : [-0.5, 0.5];
  return shares.map((share) => {
    const far = share * piece.figure.length;
    return {
      x: pose.x + far * Math.cos(pose.angle) - plan.x - far * Math.cos(plan.angle),
      y: pose.y + far * Math.sin(pose.angle) - plan.y - far * Math.sin(plan.angle),
    };
  });
}

/** "end B of pole 2 of the fan", "two-thirds along …", or the piece alone where its middle is meant. */
function gripWords(survey: Survey, grip: Grip, letters: MoveNames['letters']): string {
  if ('wall' in grip) return `the ${grip.wall} wall`;
  const { at = 0.5, piece } = grip;
  const name = pieceWords(survey, piece);
  if (isSmall(pieceNamed(survey, piece))) return name;
  const [a, b] = letters?.get(piece) ?? ['A', 'B'];
  if (at === 0 || at === 1) return `end ${at === 0 ? a : b} of ${name}`;
  return at === 0.5 ? name : `${name} at ${Math.round(100 * at)} % from ${a}`;
}

const READS: Readonly<Record<ObservationKind, (first: string, second: string) => string>> = {
  gap: (first, second) => `the gap from ${first} to ${second}`,
  between: (first, second) => `straight from ${first} to ${second}`,
  beside: (first, second) => `from ${second} square to ${first}`,
  clear: (first, second) => `along ${second} clear of ${first}`,
  ahead: (first, second) => `along ${first} to where ${second} is level`,
  level: (first, second) => `how far ${second} is ahead of ${first}`,
  'in-line': (first, second) => `how far ${second} is off the line of ${first}`,
  square: (first, second) => `how far ${first} and ${second} are from square`,
  against: (first, second) => `from ${first} to ${second}`,
  'off-wall': (first, second) => `from ${second} to ${first}`,
  'along-wall': (first, second) => `along ${second} to ${first}`,
  'from-rail': (first, second) => `from a place on ${second} straight to ${first}`,
};

/** What a tape was held to, in words. */
export function observableWords(survey: Survey, { kind, grips }: Observable, letters?: MoveNames['letters']): string {
  return READS[kind](gripWords(survey, grips[0], letters), gripWords(survey, grips[1], letters));
}

/** What a tape or a board showed, in the unit of the course. */
export function valueWords({ kind }: Pick<Observable, 'kind'>, value: number, unit: LengthUnit): string {
  return kind === 'square' ? printAngle(value) : printLength(value, unit);
}
