/**
 * change/ compares layouts and turns one into the next: what differs, by how much each measures, what a crew carries
 * where, and in which order the classes of a day need the least of it.
 */
import type { Metres, Seconds } from '../measure/quantity.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';

/**
 * One thing that a crew carries: a piece, or a riser that holds up one end of a pole. Loads of the same `type` are the
 * same thing to a crew: kind, sizes and paint, but not how it is set up.
 */
export interface Load {
  /** `obstacle/piece`; of a riser `obstacle/piece:start` or `:end`. */
  readonly key: string;
  readonly obstacle: string;
  readonly type: string;
  readonly thing: 'piece' | 'riser';
  /** The piece that it is, or that it holds up. */
  readonly piece: Piece;
  /** Where it lies, on the ground. */
  readonly pose: Pose;
  /** Where its carriers hold it: one point, or both ends of a thing that two carry. */
  readonly held: readonly [Point, ...Point[]];
}

/** Where a load is taken from, or put. */
export type Stop =
  | { readonly kind: 'ground'; readonly load: Load }
  | { readonly kind: 'truck'; readonly at: Point }
  | { readonly kind: 'aside'; readonly at: Pose };

/** One load carried from one place to another without a stop. */
export interface Carry {
  /** In the order of setting out, 1 first: the number on the sheet. */
  readonly number: number;
  /** As it lies in the end; of one that goes to the truck, as it lay. */
  readonly load: Load;
  readonly from: Stop;
  readonly to: Stop;
  /** Walked under the load by all of its carriers together. */
  readonly metres: Metres;
  /** 1 first. A pass begins when the one before it is done. */
  readonly pass: number;
  /** Index into `teams`. */
  readonly team: number;
  /** From the beginning of the change-over: when it is picked up, and when it lies measured. */
  readonly begins: Seconds;
  readonly ends: Seconds;
}

/** One or two people who walk together. */
export interface Team {
  readonly people: 1 | 2;
  /** Of each of them, loaded and empty. */
  readonly walked: Metres;
  /** When it has done its last carry. */
  readonly done: Seconds;
}

/** Who changes the layout, and where the truck stands. */
export interface Crew {
  /** 1 … 4. */
  readonly people: number;
  readonly truckAt: Point;
}

/** How one layout becomes the next with the least carrying. */
export interface ChangeOver {
  readonly crew: Crew;
  /** What lies right already, and how far it is off. */
  readonly stays: readonly { readonly from: Load; readonly to: Load; readonly off: Metres }[];
  /** By number. */
  readonly carries: readonly Carry[];
  readonly teams: readonly Team[];
  readonly passes: number;
  /** Walked under loads by all carriers, without what is laid aside on the way. */
  readonly metres: Metres;
  /** No other choice of which thing goes where has less: a lower bound from the dual problem, equal to the cost chosen. */
  readonly leastCost: Metres;
  /** What was minimised: `metres`, and a charge for each thing that is picked up. */
  readonly cost: Metres;
  readonly seconds: Seconds;
}
