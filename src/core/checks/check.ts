/**
 * checks/ judges a course by the rule book in force. One check a file; limits are data in assets/rulebooks and are
 * looked up by name. A check whose limit no book sets finds nothing, and `silentLimits` lists it.
 */
import type { Course, Level } from '../course/course.ts';
import type { Infeasible } from '../obstacles/obstacle.ts';
import type { Point } from '../plane/point.ts';
import type { Survey } from '../survey.ts';
import type { Scoring } from './rulebooks/scoring.ts';

export type Weight = 'must' | 'should' | 'note';

/** The unit in which a rule book prints a value. */
export type PrintedUnit = 'in' | 'ft' | 'cm' | 'm' | 'count' | 'degree' | 's';

/** What a limit bounds: metres, a number of things, radians or seconds inside the program. */
export type Quantity = 'length' | 'count' | 'angle' | 'time';

/**
 * One limit of a rule book, in the book's own unit, with its source. Grade A is rule text … D a forum; E is an estimate
 * of this program.
 */
export interface Limit {
  readonly least?: number;
  readonly most?: number;
  readonly unit: PrintedUnit;
  /** Whole multiples of the band are allowed as well. */
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

/** The value that the trade builds, where a limit only says what is allowed. */
export interface UsualValue {
  readonly value: number;
  readonly unit: PrintedUnit;
  readonly source: string;
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
  /** By the name of a limit. A fix aims there. */
  readonly usual?: Readonly<Record<string, UsualValue>>;
  readonly scoring?: Scoring;
}

/** A fix that one click applies: a sentence, and the course after it. */
export interface Remedy {
  readonly says: string;
  /** It only brings one size into its band, and causes no new finding: it may be applied without being looked at. */
  readonly safe?: true;
  apply(course: Course): Course;
}

/** A fix that has not been tried yet. */
export interface Proposal {
  readonly says: string;
  /** Proposals with the same idea differ only in how far they go: once one of them works, the others are left out. */
  readonly idea?: string;
  /** It removes or changes something that the designer chose (a gait, an obstacle): only a person may apply it. */
  readonly meant?: true;
  edit(course: Course): Course | Infeasible;
}

/** Findings of one mistake: one setting, or one thing that is wrong in several places. */
export interface FaultGroup {
  /** Made of the check, the obstacle, the limit and the side on which it is missed. */
  readonly id: string;
  /** Present where other values of the same group are other mistakes, metres. */
  readonly value?: number;
  /** The sentence for all of them, in the order in which they were found. */
  says(members: readonly RawFinding[]): string;
}

/** What a check found, before its fixes were tried. */
export interface RawFinding {
  /** Made of the check and the keys, so it stays the same while the fault does. */
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
  /** What of the course it says not to fit into the arena; absent: it is about something else. */
  readonly misfit?: 'obstacle' | 'start' | 'end';
  /** SI value, or a count. */
  readonly measured?: number;
  /** SI band, when there is one. */
  readonly allowed?: Band;
  readonly source: string;
  /** Where it was found, when that is more than one place. */
  readonly places?: readonly Point[];
  /** Ids of the findings that were put together in this one: a waiver for each of them is one for it. */
  readonly members?: readonly string[];
  /** Absent: it is told by itself. */
  readonly group?: FaultGroup;
  /** What may cure it, the best first. */
  readonly proposals: readonly Proposal[];
}

/** A finding, as everybody outside checks/ sees it. */
export interface Finding extends Omit<RawFinding, 'proposals' | 'group'> {
  /** The designer's reason for leaving it; absent: the finding is open. A waived finding never fails a run. */
  readonly waived?: string;
  /** Ids in the waivers that hold; there are several where each place was waived by itself. */
  readonly waivedBy?: readonly string[];
  /**
   * Fixes that were tried on a copy of the course: the finding is gone and no new must came. Worked out on first
   * access, then cached.
   */
  readonly remedies: readonly Remedy[];
}

/** The limits in force, by name; a name that is missing is set by nobody. */
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
  /** `rest`: too slow for every pointer move, run when nothing is dragged. `closer`: run only for a closer look. */
  readonly runs?: 'rest' | 'closer';
  /** Present where it judges the course as a whole: an obstacle by itself cannot be right or wrong. */
  readonly about?: 'course';
  findings(survey: Survey, limits: Limits): readonly RawFinding[];
}

/** A band in SI units: metres, radians, seconds, or a count. */
export interface Band {
  readonly least?: number;
  readonly most?: number;
  readonly multiples?: true;
}
