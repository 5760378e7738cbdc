import type { Wall } from '../../core/constraints/constraint.ts';
import type { Mark } from '../../core/plane/mark.ts';

/** A snap that holds now: marks to draw, and its sentence. */
export interface Guide {
  readonly says: string;
  readonly marks: readonly Mark[];
  /** What could be kept of it; absent: nothing can. */
  readonly snap?: Snap;
}

/** What a snap aligned to, as far as a constraint could keep it. */
export type Snap =
  | { readonly to: 'wall'; readonly wall: Wall }
  | { readonly to: 'wall-angle' }
  | { readonly to: 'pole'; readonly theirs: string; readonly mine?: string };
