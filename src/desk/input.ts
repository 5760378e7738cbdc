/** The input of the desk: a pointer, a key, a stage of the work; and the answer to what was typed. */
import type { Point } from '../core/plane/point.ts';

/** What people do with a course, in the order in which they do it. */
export type Stage = 'set' | 'ride' | 'check' | 'post' | 'change';

/** One phase of a finger, pen or mouse on the ground. */
export interface PointerInput {
  readonly phase: 'down' | 'move' | 'up' | 'cancel';
  /** Pointer id, so that a second finger is told from the first. */
  readonly pointerId: number;
  readonly at: Point;
  /** Pick radius, and the snap distance where that is not more than `MOST_SNAP`: metres at the present zoom. */
  readonly pickRadius: number;
  /** Add to what is chosen. */
  readonly isAdding: boolean;
  /** Snap nothing; where snapping is switched off at the desk: snap. */
  readonly isSnapOff: boolean;
  /** Only the piece that is dragged moves, and what holds it to others gives way. The desk says so, not the hand. */
  readonly isAlone?: boolean;
}

/** A key stroke as the keyboard layout names it (`KeyboardEvent.key`), with `mod` for Control or Command. */
export interface KeyPress {
  readonly key: string;
  readonly mod: boolean;
  readonly shift: boolean;
  readonly alt: boolean;
}

/** The answer of a command that takes typed text: nothing, or why it was rejected. */
export type Refusal = string | undefined;
