/**
 * pieces/ holds the kinds of physical things that can lie in the arena, one file a kind, true to size.
 * A piece knows where it is and what it is; it does not know why it is there.
 */
import type { Mark } from '../plane/mark.ts';
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
  figure(values: Values): Figure;
}
