import type { Wall } from '../../core/constraints/constraint.ts';
import type { Metres, Radians } from '../../core/measure/quantity.ts';
import type { Point } from '../../core/plane/point.ts';
import type { KeepSuggestion } from '../constraints/pending.ts';

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

export const EMPTY_TAPE: TapeState = { from: null, to: null, isLaid: false };
