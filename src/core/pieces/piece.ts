/**
 * pieces/ holds the kinds of physical things that can lie in the arena, one file a kind, true to size.
 * A piece knows where it is and what it is; it does not know why it is there.
 */
import type { Metres, Radians } from '../measure/quantity.ts';
import type { Mark } from '../plane/mark.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import type { Ring } from '../plane/ring.ts';
import type { Params, Values } from './params.ts';

/** One physical thing. Its pose is in the frame of the obstacle that holds it. Ids are unique in their obstacle. */
export interface Piece {
  readonly id: string;
  readonly kind: string;
  readonly values: Values;
  readonly pose: Pose;
  /** The pole that does not move: the solver never touches it. */
  readonly fixed?: true;
}

/** What a piece looks like and covers, in its own frame: origin at its middle, long side along +x. Metres. */
export interface Figure {
  readonly footprint: Ring;
  readonly marks: readonly Mark[];
  /** Size along x and along y. For a pole: length and thickness. */
  readonly length: number;
  readonly width: number;
  /** Highest point above the ground. */
  readonly height: number;
  /** `ground`: a hoof can meet it. `standing`: the body can. `deck`: it is walked on. */
  readonly stands: 'ground' | 'standing' | 'deck';
}

/** A part that holds a piece up and is carried for itself. In the piece's own frame, metres. */
export interface Fitting {
  readonly end: 'start' | 'end';
  readonly at: Point;
  readonly height: Metres;
}

/** What a crew has to know of a kind: how it is carried, and when one lies as another lay. */
export interface Handling {
  /** How many a person takes at once, or how many people take one; `by-length`: two people from a length on. */
  readonly carriers: 'several' | 'one' | 'two' | 'by-length';
  /** The turns after which it is the same thing in the same place. */
  readonly alike: 'any-turn' | 'half-turn' | 'no-turn';
  /** Parameters that say how it is set up, not what it is; absent: none does. */
  readonly rigging?: readonly string[];
  /** What its rigging turns it by: two of one kind lie alike when pose and this together do. Absent: nothing. */
  turnedBy?(values: Values): Radians;
  /** Whether it rolls when it is touched, so that it is chocked; absent: it does not. */
  rolls?(values: Values): boolean;
  /** It breaks or is run over, so that one or more are taken along beside those in use (common practice, no source). */
  readonly isSpared?: true;
  /** Absent: none. */
  fittings?(values: Values): readonly Fitting[];
}

/** A kind of thing that can lie in the arena. Ids are written into files: never reused, never renamed. */
export interface PieceKind {
  readonly id: string;
  readonly title: string;
  readonly params: Params;
  /** `long`: its ends are told apart when it is measured; `small`: it is measured as one spot. */
  readonly extent: 'long' | 'small';
  /** Limits of a rule book that are about pieces of this kind, by name; absent: none is. */
  readonly limits?: readonly string[];
  /** Present when a drawing shows it plainly, or the words name it: a legend leaves it out. */
  readonly isPlain?: true;
  /** Absent: one person takes one, and its two ends are told apart. */
  readonly handling?: Handling;
  figure(values: Values): Figure;
}
