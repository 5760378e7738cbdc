import type { ObservationKind } from '../../constraints/constraint.ts';
import { printAngle } from '../../measure/angle.ts';
import { printLength } from '../../measure/length.ts';
import { FOOT, INCH, type LengthUnit, type Metres } from '../../measure/quantity.ts';
import { TAPE_STEP } from '../plan/rounded-build.ts';
import type { Observation } from '../setout.ts';

/** A reading that is nearer to nothing than this has no figure: ends are level, a pole lies against another. Metres or radians. */
const NOTHING = 1e-4;
/** Rounding by less than this is not told, metres: nobody sees it on a tape. */
const UNSEEN = 0.0005;

/** Observed without a figure when their reading is nothing. */
const BROUGHT_TO_NOTHING: ReadonlySet<ObservationKind> = new Set(['ahead', 'level', 'in-line', 'square', 'against']);

/** Whether the reading is nothing, so that it is said in words alone. */
export function isNothing({ kind, reading }: Pick<Observation, 'kind' | 'reading'>): boolean {
  return BROUGHT_TO_NOTHING.has(kind) && Math.abs(reading) < NOTHING;
}

/** A length as a tape shows it, metres: feet never without their inches, metres in half centimetres. */
export function readingWords(value: Metres, unit: LengthUnit): string {
  if (unit === 'ft') return printLength(value, unit).replace(/'$/, `' 0"`);
  const halves = Math.round(Math.abs(value) * 200) / 200;
  const sign = value < 0 && halves > 0 ? '−' : '';
  return `${sign}${halves.toFixed(Math.round(halves * 1000) % 10 === 0 ? 2 : 3)} m`;
}

/** A length finer than a tape shows it: `6' 4.19"`, `1.937 m`. */
function fineWords(value: Metres, unit: LengthUnit): string {
  if (unit === 'm') return `${value.toFixed(3)} m`;
  const hundredths = Math.round((value / INCH) * 100);
  const feet = Math.trunc(hundredths / 1200);
  const inches = Math.abs((hundredths - feet * 1200) / 100).toFixed(2);
  return feet === 0 ? `${hundredths < 0 ? '−' : ''}${inches}"` : `${feet}' ${inches}"`;
}

/** "3' 4¼" stands for 3' 4.19" on the drawing": what rounding to the tape does; undefined where it does nothing. */
export function roundingWords({ kind, exact, reading }: Observation, unit: LengthUnit): string | undefined {
  if (kind === 'square' || Math.abs(exact - reading) < UNSEEN) return undefined;
  return `${readingWords(reading, unit)} stands for ${fineWords(exact, unit)} on the drawing.`;
}

/** How far off a reading may be, as a length on the tape. Never finer than the tape shows. */
export function withinWords(tolerance: Metres, unit: LengthUnit): string {
  return readingWords(Math.max(tolerance, TAPE_STEP[unit]), unit);
}

/** An angle that is no right angle, as a crew is told it. */
export function angleWords(offSquare: number): string {
  return printAngle(Math.PI / 2 - Math.abs(offSquare));
}

/** What a walk is told to: nobody paces it out finer. */
const WALK_STEP: Readonly<Record<LengthUnit, Metres>> = { ft: 10 * FOOT, m: 5 };

/** The length of a walk, roughly: "about 790'". */
export function walkWords(length: Metres, unit: LengthUnit): string {
  return `about ${printLength(Math.round(length / WALK_STEP[unit]) * WALK_STEP[unit], unit)}`;
}
