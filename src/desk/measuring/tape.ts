import type { Wall } from '../../core/constraints/constraint.ts';
import type { Course } from '../../core/course/course.ts';
import type { Metres, Radians } from '../../core/measure/quantity.ts';
import type { Point } from '../../core/plane/point.ts';
import type { KeepSuggestion } from '../constraints/pending.ts';
import { existingKeys } from '../selection/selection.ts';

/** What one end of the tape is held to. `at` is a fraction along a piece. */
export type TapeEnd =
  | { readonly on: 'piece'; readonly key: string; readonly at: number }
  | { readonly on: 'wall'; readonly wall: Wall; readonly at: Point }
  | { readonly on: 'ground'; readonly at: Point };

/** The tape while it is on. `isLaid`: both ends are down and it stays. */
export interface TapeState {
  readonly from: TapeEnd | null;
  readonly to: TapeEnd | null;
  readonly isLaid: boolean;
}

/** What the tape shows. */
export interface TapeReading {
  readonly tape: readonly [Point, Point];
  readonly length: Metres;
  /** Between the directions of two poles, or of a pole and a wall; null where one has none. */
  readonly angle: Radians | null;
  /** What the tape reads: "6' 0"". */
  readonly text: string;
  readonly says: string;
  readonly suggestion: KeepSuggestion | null;
}

/** A pointer that is down while the tape is on. */
export interface TapePress {
  readonly at: Point;
  /** What the tape was before, in case this is the first pointer of a pinch. */
  readonly before: TapeState;
  /** It set the first end; the second follows when it is dragged, or with the next press. */
  readonly isFirst: boolean;
}

export const EMPTY_TAPE: TapeState = { from: null, to: null, isLaid: false };

function isThere(end: TapeEnd | null, course: Course): boolean {
  return end?.on !== 'piece' || existingKeys([end.key], course).length > 0;
}

/** The tape on another course: empty when a piece that it was held to is gone. */
export function validTape(tape: TapeState | null, course: Course): TapeState | null {
  if (tape === null) return null;
  return isThere(tape.from, course) && isThere(tape.to, course) ? tape : EMPTY_TAPE;
}
