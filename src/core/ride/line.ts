/**
 * ride/ joins passages into the line of travel and works out what the horse does on it: gaits, landings, time. All
 * distances are along the line, in metres from its start.
 */
import type { Lead, LeadChange } from '../course/course.ts';
import type { Gait } from '../horses/horse.ts';
import type { Metres, Radians, Seconds } from '../measure/quantity.ts';
import type { Move } from '../obstacles/passage.ts';
import type { Path } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import type { KeptWay } from './kept-way.ts';

/**
 * A part of the line ridden in one way: the way to an obstacle has a part for each gait that is ridden on it. A turn on the
 * spot about the middle of the horse has length 0 and a `turn`; one about its front or hind feet is an arc round them.
 */
export interface LineElement {
  /** Index into the ride's legs; the way to the end belongs to the last leg. */
  readonly leg: number;
  readonly part: 'approach' | 'obstacle' | 'finish';
  readonly move: Move;
  readonly gait: Gait;
  readonly path: Path;
  readonly from: Metres;
  readonly length: Metres;
  /** Added to the path's heading it gives where the horse faces: 0 forwards, π backwards, ±π/2 sideways. */
  readonly facing: Radians;
  /** Signed turn about the middle of the horse; 0 for the rest. */
  readonly turn: Radians;
  readonly seconds: Seconds;
  /** Of those, what goes with its length and turn; the rest is transition and settling. */
  readonly moving: Seconds;
}

/** Where the line goes over the middle of a pole's thickness. */
export interface Crossing {
  readonly leg: number;
  readonly obstacle: string;
  /** `obstacle/piece`. */
  readonly key: string;
  readonly at: Metres;
  readonly pose: Pose;
  /** Along the pole, 0 … 1. */
  readonly fraction: number;
  /** How far the heading is from square to the pole; 0 is square. */
  readonly skew: Radians;
}

/** The landings of the horse in a gap. */
export interface Landings {
  readonly count: number;
  /** The step or stride that makes `count` landings even. */
  readonly each: Metres;
  /** Whether `each` is inside what the horse does in this gait; otherwise `count` is the nearest. */
  readonly fits: boolean;
  /** The nearest gaps along the line that do fit, shorter and longer; one of them when there is no shorter. */
  readonly nearest: readonly Metres[];
  readonly places: readonly { readonly at: Metres; readonly point: Point }[];
}

/** The room between two poles that follow each other on one passage, both crossed at a ride. */
export interface Gap {
  readonly leg: number;
  readonly obstacle: string;
  readonly gait: Gait;
  /** Keys of the two pieces. */
  readonly keys: readonly [string, string];
  /** Straight tape, near face to near face, on the chord of the two crossings. */
  readonly taped: Metres;
  /** Along the line, near face to near face. */
  readonly ridden: Metres;
  readonly from: Metres;
  readonly to: Metres;
  /** The near faces, for a tape to be drawn between. */
  readonly ends: readonly [Point, Point];
  readonly landings: Landings;
}

/** A place where the horse cannot follow any line, and why. */
export interface RideBreak {
  readonly leg: number;
  readonly at: Point;
  readonly why: string;
}

/** How the horse moves: standing, or at a gait. */
export type Going = Gait | 'standing';

/** Where the horse changes from one way of going to another. */
export interface Transition {
  readonly leg: number;
  readonly before: Going;
  readonly after: Going;
  /**
   * Its place, metres along the line: where one element ends in the one gait and the next begins in the other. The middle
   * of the transition; of a halt, where the horse stands.
   */
  readonly at: Metres;
  /** The line there. */
  readonly pose: Pose;
  /** Where it begins, metres along the line. */
  readonly from: Metres;
  /** Metres it takes: its time at the mean of both speeds. */
  readonly length: Metres;
  /** Metres of the line that there are for it; shared evenly by all in one stretch. */
  readonly room: Metres;
  readonly fits: boolean;
  /** Whether the line turns no more tightly than the gait beside the obstacle can over the length that it takes. */
  readonly steady: boolean;
}

/** A part of the line that is loped on one lead. */
export interface LeadStretch {
  /** The leg whose lead it is: what is loped on beyond an obstacle belongs to that obstacle's leg. */
  readonly leg: number;
  /** Which lope it is part of, from 0: the parts of one follow each other without a break. */
  readonly lope: number;
  readonly part: LineElement['part'];
  readonly from: Metres;
  readonly to: Metres;
  /** The way it bends; null on a straight, and on a bend at either end of a lope that is too brief to ask for a lead. */
  readonly bend: Lead | null;
  /** The tightest radius, metres; null where `bend` is. */
  readonly radius: Metres | null;
  /** Chosen, else the inside of the bend, else of the next bend; null where the line never bends and nothing is chosen. */
  readonly lead: Lead | null;
  readonly chosen: boolean;
}

/**
 * What is reported about leads. `wrong-lead`: the outside lead over an obstacle or on a bend tighter than the preferred
 * radius; `counter-lope`: the outside lead on a wide bend; `change`: another lead is needed further on; `open`: a lope on a
 * line that never bends, and nobody chose its lead.
 */
export type LeadNote =
  | {
      readonly kind: 'open';
      readonly leg: number;
      readonly from: Metres;
      readonly to: Metres;
      readonly at: Point;
    }
  | {
      readonly kind: 'wrong-lead' | 'counter-lope';
      readonly leg: number;
      readonly from: Metres;
      readonly to: Metres;
      readonly at: Point;
      readonly lead: Lead;
      readonly bend: Lead;
      readonly radius: Metres;
    }
  | {
      readonly kind: 'change';
      readonly leg: number;
      readonly from: Metres;
      readonly to: Metres;
      readonly at: Point;
      /** Where it is made, metres along the line, and the line there. */
      readonly place: Metres;
      readonly pose: Pose;
      readonly before: Lead;
      readonly after: Lead;
      /** As the class asks; absent: either way. */
      readonly how?: LeadChange;
      /** Metres between the bends, and metres that a change wants. */
      readonly room: Metres;
      readonly wants: Metres;
      readonly fits: boolean;
    };

/** How much of a gait is shown: all of it, the longest stretch without a break, and the longest between two obstacles. */
export interface ShownGait {
  readonly gait: Gait;
  readonly total: Metres;
  readonly longest: Span;
  readonly between: Span;
}

/** How much is loped on a lead, metres. */
export interface ShownLead {
  readonly lead: Lead;
  readonly total: Metres;
}

/** A part of the line; from and to are the same when there is none. */
export interface Span {
  readonly from: Metres;
  readonly to: Metres;
}

/** A way between two obstacles as it was found: what it was asked, and the turn on the spot before it. */
export interface LegWay {
  /** The id of the leg that it leads to; null for the way to the end. */
  readonly leg: string | null;
  readonly by: Radians;
  readonly kept: KeptWay;
}

/** The line of travel of one go. */
export interface Line {
  readonly ways: readonly LegWay[];
  readonly elements: readonly LineElement[];
  readonly crossings: readonly Crossing[];
  readonly gaps: readonly Gap[];
  readonly breaks: readonly RideBreak[];
  readonly transitions: readonly Transition[];
  readonly leads: readonly LeadStretch[];
  readonly leadNotes: readonly LeadNote[];
  /** By gait, slow to fast. */
  readonly shown: readonly ShownGait[];
  /** Both leads, left first. */
  readonly shownLeads: readonly ShownLead[];
  readonly length: Metres;
  /** Seconds of each leg, approach included, and of the whole go. */
  readonly clock: { readonly legs: readonly Seconds[]; readonly go: Seconds };
}
