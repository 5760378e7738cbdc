/**
 * course/ holds the document: what it is, how it may be edited, and its history. Plain immutable JSON, SI units.
 */

import type { Constraint, Wall } from '../constraints/constraint.ts';
import type { Gait } from '../horses/horse.ts';
import type { LengthUnit, Metres, Seconds } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import type { Values } from '../pieces/params.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';

export const FORMAT = 'polewright-course';
/** A name or title is no longer than this, signs: what fits on one line of a page. */
export const LONGEST_NAME = 120;

export const VERSION = 1;

/** More do not ride in one class. */
export const MOST_ENTRIES = 500;

/** A rectangle: x along its long side, y across, origin at its datum corner (south-west). */
export interface Arena {
  readonly title: string;
  readonly length: Metres;
  readonly width: Metres;
  /** Where horses come in: the middle of the opening, measured along the wall from its west or south end. */
  readonly entrance: { readonly wall: Wall; readonly at: Metres; readonly width: Metres };
  /** Where the judge sits or stands, on the ground; absent: not said. */
  readonly judge?: Point;
}

/** A line of the truck list: so many of one thing. A piece is taken from the first line whose kind and sizes it has. */
export interface Stock {
  readonly id: string;
  readonly title: string;
  readonly kind: string;
  /** Only the sizes that tell this line from others. */
  readonly values: Values;
  readonly count: number;
}

export type Lead = 'left' | 'right';

/** How the lead is changed: through a slower gait for a few strides, or at the lope in one stride. */
export type LeadChange = 'simple' | 'flying';

/** On which hand the horse leaves a thing that it passes. */
export interface PassedSide {
  readonly obstacle: string;
  readonly hand: 'left' | 'right';
}

/** One obstacle in the order of the go. */
export interface Leg {
  readonly id: string;
  readonly obstacle: string;
  readonly passage: string;
  /** The designer has not chosen a passage: this one is taken for the whole ride's sake, and anew after each change. */
  readonly openWay?: true;
  /** Over the obstacle. */
  readonly gait: Gait;
  /** From the obstacle before it to this one. */
  readonly approach: Gait;
  /** Chosen lead; absent: from the bend. */
  readonly lead?: Lead;
  /** Points that the approach is pulled through, in order. */
  readonly bends: readonly Point[];
  /** On which hand the approach leaves other obstacles, where the designer has chosen it. */
  readonly passes?: readonly PassedSide[];
  /** The designer's own words for the pattern; absent: made from the course. */
  readonly words?: string;
  /** The sentence that the course made when those were written; absent: not known, and they are never stale. */
  readonly wordsFor?: string;
}

/** The go: from the start, over the legs in order, to the end. */
export interface Ride {
  readonly start: Pose;
  readonly legs: readonly Leg[];
  /** Where the go ends; absent: where the last obstacle ends. */
  readonly end?: Pose;
}

/** One alternative of a course. Obstacles are in no order; the ride gives them their numbers. */
export interface Layout {
  readonly id: string;
  readonly title: string;
  readonly obstacles: readonly Obstacle[];
  /** Between obstacles and to the walls; grips name `obstacle/piece`. */
  readonly constraints: readonly Constraint[];
  readonly ride: Ride;
}

export type Level = 'open' | 'amateur' | 'youth' | 'novice' | 'walk-jog' | 'led';

/** Somebody who rides in the class. */
export interface Entry {
  readonly id: string;
  /** As it is worn: digits, and letters where a show has them; empty while unknown. */
  readonly number: string;
  readonly rider: string;
  readonly horse: string;
  /** Does not ride after all. */
  readonly scratched?: true;
  /** How much later it goes than its turn, and all after it with it; absent: when it is its turn. */
  readonly late?: Seconds;
}

/** How an order was drawn, so that it can be drawn again. */
export interface Draw {
  readonly seed: number;
  /** Goes of others that lie at least between two goes of one rider; fewer where there are not as many. */
  readonly between: number;
}

/** Who rides it, when, and for how long. */
export interface ClassEntry {
  readonly show: string;
  readonly title: string;
  readonly level: Level;
  /** ISO date, or empty while unknown. */
  readonly date: string;
  /** How many ride; where there is a list, it counts (`entryCount`). */
  readonly entries: number;
  /** Who they are, in the order of go; absent: only their count is known. */
  readonly list?: readonly Entry[];
  /** Seconds of the day at which the first go begins; absent: as the day has it, or unknown. */
  readonly starts?: Seconds;
  /** Absent: the order of the list was not drawn, or has been changed since. */
  readonly drawn?: Draw;
  /** From one go to the next; absent: usual. */
  readonly changeover?: Seconds;
  /** The ground is dragged after so many goes, 0 for never; absent: usual. */
  readonly dragEvery?: number;
  /** How long a drag takes, with what is set again; absent: usual. */
  readonly drag?: Seconds;
  /** How long the class may take; absent: as long as it takes. */
  readonly allotted?: Seconds;
  /** How a change of lead is to be made; absent: either way. */
  readonly leadChange?: LeadChange;
}

/** One class of a day: who rides which layout, how many, and what is fixed about it. */
export interface DayClass {
  readonly id: string;
  /** The layout that it rides, by id. */
  readonly layout: string;
  readonly title: string;
  readonly level: Level;
  readonly entries: number;
  /** As in a class entry; the class that is the course's own has the course's list (`dayClassOf`). */
  readonly list?: readonly Entry[];
  readonly drawn?: Draw;
  /** Who judges it; the classes of one judge follow each other. Absent: open. */
  readonly judge?: string;
  /** Seconds of the day before which it may not begin, and at which it should. Absent: when it is its turn. */
  readonly startsAt?: Seconds;
  /** Names or numbers of those who ride in other classes as well; absent: nobody is known to. */
  readonly riders?: readonly string[];
  /** As in a class entry; absent: as the class of the course has it. */
  readonly changeover?: Seconds;
  readonly dragEvery?: number;
  readonly drag?: Seconds;
}

/** A time without riding. It begins at its time, or when the class that is ridden then ends. */
export interface DayBreak {
  readonly id: string;
  readonly title: string;
  /** Seconds of the day. */
  readonly from: Seconds;
  readonly length: Seconds;
}

/** The classes that are ridden in one arena on one day. */
export interface Day {
  /** Seconds of the day at which the crew begins to set out the first layout. */
  readonly starts: Seconds;
  /** In running order. */
  readonly classes: readonly DayClass[];
  readonly breaks: readonly DayBreak[];
  /** What a rider needs between two classes; absent: usual. */
  readonly restBetween?: Seconds;
}

/** The rule book in force by id, and the limits that the show overrides, by limit name. */
export interface RuleChoice {
  readonly id: string;
  readonly house: Readonly<Record<string, HouseLimit>>;
}
export interface HouseLimit {
  readonly least?: number;
  readonly most?: number;
  readonly reason: string;
}

/** A finding that the designer accepts, by its id, with the reason; printed on the designer's own copy. */
export interface Waiver {
  readonly finding: string;
  readonly reason: string;
}

/** Who changes one layout into the next, and sets one out. */
export interface CrewChoice {
  readonly people: 1 | 2 | 3 | 4;
  /** Where the truck stands; absent: in the entrance. */
  readonly truckAt?: Point;
  /** How many tapes there are, how long each is, and in what they are marked; absent: one of 100 ft or 30 m, in the course's unit. */
  readonly tapes?: 1 | 2 | 3;
  readonly tape?: Metres;
  readonly marked?: LengthUnit;
  /** How a right angle is made; absent: by 3 : 4 : 5. */
  readonly rightAngle?: 'board' | 'three-four-five';
}

export const DEFAULT_CREW: CrewChoice = { people: 2 };

export interface Course {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  readonly title: string;
  readonly unit: LengthUnit;
  readonly arena: Arena;
  readonly truck: readonly Stock[];
  readonly horse: string;
  readonly rulebook: RuleChoice;
  readonly class: ClassEntry;
  /** The day on which the layouts are ridden, class by class; absent: not planned here. */
  readonly day?: Day;
  /** Absent: none. */
  readonly waived?: readonly Waiver[];
  readonly layouts: readonly [Layout, ...Layout[]];
  /** Id of the layout that is shown. */
  readonly current: string;
  readonly notes: string;
  /** Absent: two people, and the truck in the entrance. */
  readonly crew?: CrewChoice;
}

export function currentLayout(course: Course): Layout {
  return course.layouts.find((layout) => layout.id === course.current) ?? course.layouts[0];
}
