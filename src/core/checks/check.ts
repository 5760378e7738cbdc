/**
 * checks/ says what is wrong with a course under the rule book in force. One check a file; bands live in
 * assets/rulebooks and are looked up by name. A check that finds no limit stays silent, and `silentLimits` says so.
 */
import type { Course, Level } from '../course/course.ts';
import type { Infeasible } from '../obstacles/obstacle.ts';
import type { Point } from '../plane/point.ts';
import type { Survey } from '../survey.ts';

export type Weight = 'must' | 'should' | 'note';

/** The unit in which a rule book prints a value. */
export type PrintedUnit = 'in' | 'ft' | 'cm' | 'm' | 'count' | 'degree' | 's';

/** What a limit bounds: metres, a number of things, radians or seconds inside the program. */
export type Quantity = 'length' | 'count' | 'angle' | 'time';

/** One band of a rule book, in its own unit, with where it stands. A is rule text … D is a forum; E an estimate of ours. */
export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly unit: PrintedUnit;
  /** Whole multiples of the band are allowed too. */
  readonly multiples?: true;
  /** Where a height is taken; absent: at the highest point. */
  readonly measured?: 'highest' | 'middle';
  /** How strict this entry is; absent: as the check says. */
  readonly weight?: Weight;
  /** Who says so, where and when; `common practice, no source` and `estimate` where nobody does. */
  readonly source: string;
  readonly url?: string;
  readonly grade: 'A' | 'B' | 'C' | 'D' | 'E';
  /** What the source leaves open, and how it is read here. */
  readonly note?: string;
  /** Set when the show overrides the book: why. */
  readonly house?: string;
}

/** One coherent set of limits. */
export interface RuleBook {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly about: string;
  readonly limits: Limits;
  /** What it prints differently for one level, in place of the limit of the same name. */
  readonly levels?: Readonly<Partial<Record<Level, Limits>>>;
  /** What it prints differently for ponies. */
  readonly ponies?: Limits;
}

/** A fix that a person can apply with one click: a sentence, and the course it leads to. */
export interface Remedy {
  readonly says: string;
  /** It only brings a size to what is asked, and nothing new came with it: it may be applied without a look. */
  readonly safe?: true;
  apply(course: Course): Course;
}

/** A fix that nobody has tried yet. */
export interface Proposal {
  readonly says: string;
  /** Proposals of one idea differ only in how far they go: the first that mends stands for all. */
  readonly idea?: string;
  /** It takes away or changes what the designer meant (a gait, an obstacle): never applied without a person. */
  readonly meant?: true;
  edit(course: Course): Course | Infeasible;
}

/** What a check has to say, before its fixes were tried. */
export interface RawFinding {
  /** Stable while the thing is the same: check and keys. */
  readonly id: string;
  readonly check: string;
  readonly weight: Weight;
  /** Plain words with the measured and the allowed value in the course's unit. */
  readonly says: string;
  readonly because: string;
  readonly at: Point;
  /** Index of the leg it belongs to; absent: to the course. */
  readonly leg?: number;
  /** Keys of the obstacles (`fan-1`) and pieces (`fan-1/pole-2`) it is about. */
  readonly keys: readonly string[];
  /** SI value, or a count. */
  readonly measured?: number;
  /** SI band, when there is one. */
  readonly allowed?: Band;
  readonly source: string;
  /** What might mend it, the best first. */
  readonly proposals: readonly Proposal[];
}

/** What a check has to say. */
export interface Finding extends Omit<RawFinding, 'proposals'> {
  /** Why the designer lets it stand; absent: it stands open. A waived finding fails no run. */
  readonly waived?: string;
  /** Fixes that were tried on a copy: the finding goes and no new must comes. Tried on the first reading, then kept. */
  readonly remedies: readonly Remedy[];
}

/** The limits in force, by name; a name that is missing is one that nobody sets. */
export type Limits = Readonly<Record<string, Limit>>;

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
  /** It takes longer than a pointer move has: only worked out when somebody asks for a closer look. */
  readonly closer?: true;
  findings(survey: Survey, limits: Limits): readonly RawFinding[];
}

/** A band in SI units: metres, radians, seconds, or a count. */
export interface Band {
  readonly least?: number;
  readonly most?: number;
  readonly multiples?: true;
}
