/**
 * checks/ says what is wrong with a course under the rule book in force. One check a file; bands live in
 * assets/rulebooks and are looked up by name. A check that finds no limit stays silent, and `silent` says so.
 */
import type { Course } from '../course/course.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import type { Survey } from '../survey.ts';

export type Weight = 'must' | 'should' | 'note';

/** The unit in which a rule book prints a value. */
export type PrintedUnit = 'in' | 'ft' | 'cm' | 'm' | 'count' | 'degree' | 's';

/** One band of a rule book, in its own unit, with where it stands. A is rule text … D is a forum; E an estimate of ours. */
export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly unit: PrintedUnit;
  /** Whole multiples of the band are allowed too. */
  readonly multiples?: true;
  /** How strict this entry is; absent: as the check says. */
  readonly weight?: Weight;
  readonly source: string;
  readonly grade: 'A' | 'B' | 'C' | 'D' | 'E';
  /** Set when the show overrides the book: why. */
  readonly house?: string;
}

/** One coherent set of limits. */
export interface RuleBook {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly about: string;
  readonly limits: Readonly<Record<string, Limit>>;
}

/** A fix that a person can apply with one click: a sentence, and the course it leads to. */
export interface Remedy {
  readonly says: string;
  apply(course: Course): Course;
}

export interface Finding {
  /** Stable while the thing is the same: check and keys. */
  readonly id: string;
  readonly check: string;
  readonly weight: Weight;
  /** Plain words with the measured and the allowed value in the course's unit. */
  readonly says: string;
  readonly because: string;
  readonly at: Point;
  /** Keys of the obstacles (`fan-1`) and pieces (`fan-1/pole-2`) it is about. */
  readonly keys: readonly string[];
  /** SI value, or a count. */
  readonly measured?: number;
  /** SI band, when there is one. */
  readonly allowed?: { readonly least?: number; readonly most?: number; readonly multiples?: true };
  readonly source: string;
  readonly remedies: readonly Remedy[];
}

/** One rule of a good course. */
export interface Check {
  readonly id: string;
  /** What it asks for. */
  readonly says: string;
  /** Why it matters to horse and rider. */
  readonly because: string;
  readonly weight: Weight;
  /** Names looked up in the rule book. */
  readonly limits: readonly string[];
  run(survey: Survey, limits: Readonly<Record<string, Limit>>): readonly Finding[];
}

/** A band in SI units. */
export interface Band {
  readonly least?: Metres;
  readonly most?: Metres;
}
