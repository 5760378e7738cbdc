/**
 * setout/ turns a layout into what a crew does with tapes: which piece is laid in which order, what is held still, what the
 * tape reads, and how far off it all can come to lie. In the words of surveying: each piece is determined by observations
 * to pieces that lie already and to the walls.
 */
import type { Grip, ObservationKind } from '../constraints/constraint.ts';
import type { LengthUnit, Metres, Radians } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';

/** How a right angle is made: with a board that has one, or with a triangle of 3 : 4 : 5. */
export type RightAngle = 'board' | 'three-four-five';

/** Who sets out, and with what. */
export interface SetOutCrew {
  readonly people: 1 | 2 | 3 | 4;
  readonly tapes: 1 | 2 | 3;
  /** Length of each tape, metres. */
  readonly tape: Metres;
  /** What the tapes are marked in: readings are rounded to a quarter inch, or to 5 mm. */
  readonly marked: LengthUnit;
  readonly rightAngle: RightAngle;
}

/** A relation of pieces that can be observed, before there is a reading. */
export interface Observable {
  readonly kind: ObservationKind;
  readonly grips: readonly [Grip, Grip];
  /** On which side of the first's (of `beside` and `against`: the second's) middle line the other lies: 1 is its +y side. */
  readonly side: 1 | -1;
  /** Of `along-wall` and `from-rail`: where on the wall the tape begins, metres from its start (see `wallPoint`). */
  readonly from?: Metres;
  /** Of `along-wall`: which way the tape runs from there; absent: towards the wall's end. */
  readonly runs?: 1 | -1;
}

/** What the tape is to read, and how sure it is. */
export interface Observation extends Observable {
  /** As the drawing has it, metres or radians. */
  readonly exact: number;
  /** Rounded to the tape: what the crew pulls to. */
  readonly reading: number;
  /** Standard error of one such observation, with placing, metres or radians. */
  readonly sigma: number;
  /** The constraint that it comes from; absent: it was added to determine the piece. */
  readonly constraint?: string;
}

/** An observation that proves a step: it is not used to lay the piece. */
export interface SetOutCheck extends Observation {
  /** A reading further from `reading` than this says that something is wrong, metres or radians. */
  readonly tolerance: number;
}

/** Standard errors of a piece: of its middle along and across its own direction, metres, and of its heading, radians. */
export interface PieceError {
  readonly along: Metres;
  readonly across: Metres;
  readonly turn: Radians;
  /** Of the end that is worst off, in its worst direction. */
  readonly end: Metres;
}

/** A place that is badly determined, with what would be better. */
export interface WeakFix {
  /** The angle at which the two strongest observations meet, radians, 0 … π/2. */
  readonly angle: Radians;
  /** What would meet one of them better, as a check before the next piece is laid; absent: nothing that is near does. */
  readonly better?: Observation;
}

/** One piece is laid. */
export interface SetOutStep {
  /** From 1 within its part. */
  readonly number: number;
  /** Key of the piece that is laid. */
  readonly piece: string;
  /** Keys of the pieces that the tape is held to, and names of walls as `wall south`. They all lie already. */
  readonly held: readonly string[];
  readonly observations: readonly Observation[];
  /** Its heading is set by eye as the drawing has it: two observations place a small thing. */
  readonly turnedByEye?: true;
  readonly checks: readonly SetOutCheck[];
  /** Relative to the part's first piece; of that one on the ground. */
  readonly error: PieceError;
  readonly weak?: WeakFix;
}

/** Pieces that are laid one from another: an obstacle, or several that are tied together. The first comes from the walls. */
export interface SetOutPart {
  readonly obstacles: readonly [string, ...string[]];
  readonly steps: readonly [SetOutStep, ...SetOutStep[]];
  /** Standard errors of the first piece on the ground. */
  readonly place: PieceError;
  /** Letters of the ends of long pieces, `[at 0, at 1]`, by piece key. */
  readonly letters: ReadonlyMap<string, readonly [string, string]>;
}

/** What becomes of a gap on the line of travel, or one that a constraint holds. */
export interface GapError {
  readonly keys: readonly [string, string];
  readonly at: readonly [number, number];
  /** As drawn, metres. */
  readonly plan: Metres;
  /** Laid by the rounded readings without an error. */
  readonly rounded: Metres;
  readonly sigma: Metres;
  /** Both on the line of travel of the same obstacle, so that the horse feels it. */
  readonly isRidden: boolean;
}

/** How a layout is set out. */
export interface SetOut {
  readonly crew: SetOutCrew;
  /** In the order in which the crew walks. */
  readonly parts: readonly SetOutPart[];
  /** By piece key: where a piece comes to lie by the rounded readings without an error. */
  readonly built: ReadonlyMap<string, Pose>;
  readonly gaps: readonly GapError[];
  /** The largest standard error of a ridden gap; 0 when there is none. */
  readonly worstGap: Metres;
  /** Walked from the way in to each part and between its pieces, metres. */
  readonly walked: Metres;
}
