import type { Wall } from '../../core/constraints/constraint.ts';
import type { Mark } from '../../core/plane/mark.ts';

/** A snap that is holding right now: marks to draw, and its sentence. */
export interface Guide {
  readonly says: string;
  readonly marks: readonly Mark[];
  /** What could be kept of it; absent: nothing can. */
  readonly snap?: Snap;
}

/** What a snap drew to, as far as it could be kept for good. */
export type Snap =
  | { readonly to: 'wall'; readonly wall: Wall }
  | { readonly to: 'wall-angle' }
  | { readonly to: 'pole'; readonly theirs: string; readonly mine?: string };
