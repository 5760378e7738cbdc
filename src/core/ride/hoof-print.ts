import type { Lead } from '../course/course.ts';
import type { Gait } from '../horses/horse.ts';
import type { Metres, Radians, Seconds } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import type { Foot } from './footfall.ts';

/** Where a hoof comes down. */
export interface HoofPrint {
  readonly leg: number;
  /** How the horse goes there; `halt`: it stands square. */
  readonly gait: Gait | 'back' | 'side-pass' | 'turn' | 'halt';
  /** On which lead a lope comes down so. */
  readonly lead: Lead | null;
  readonly foot: Foot;
  readonly point: Point;
  /** Where the hoof points. */
  readonly heading: Radians;
  /** The direction in which the foot was carried: the heading where the horse goes forward. */
  readonly carried: Radians;
  /** Metres along the line at which the middle of the horse is, and when that is. */
  readonly at: Metres;
  readonly time: Seconds;
  /** Metres from one print of this foot to the next, as the horse goes there; 0 where the foot stays. */
  readonly stride: Metres;
  /** How far along its way the hoof may come down elsewhere, as a standard deviation, metres. */
  readonly spread: Metres;
}

/** A print before it has its place in the go: metres from the beginning of its stretch. */
export type LocalPrint = Omit<HoofPrint, 'time' | 'leg'> & {
  /** How much of the time of its element is over, 0 … 1, where the horse makes no way. */
  readonly share?: number;
};

/** How the horse goes where a hoof comes down, for a sentence: "at a jog", "while backing". */
export const PRINT_WORDS: Readonly<Record<HoofPrint['gait'], string>> = {
  walk: 'at a walk',
  jog: 'at a jog',
  lope: 'at a lope',
  back: 'while backing',
  'side-pass': 'while side passing',
  turn: 'in the turn',
  halt: 'at the halt',
};
