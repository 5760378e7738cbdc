/** What a command or a gesture leaves behind, as data. `editor.ts` is the one place that applies it. */
import type { Course } from '../core/course/course.ts';
import type { PendingConflict } from './constraints/pending.ts';
import type { Keys } from './selection/selection.ts';

/** What letting go here leaves behind. */
export interface Commit {
  /** Absent: the course stays as it was. */
  readonly course?: Course;
  readonly chosen: Keys;
  /** In the history. */
  readonly label: string;
  /** Afterwards, for the status line and the screen reader. */
  readonly said: string;
}

/** A step to take, why there is none, or what must give way first. Steps that `join` the one before, under the same key, become one in the history. */
export type Plan =
  | (Commit & { readonly join?: string })
  | { readonly refusal: string }
  | { readonly conflict: PendingConflict }
  | { readonly question: PendingQuestion };

/** A change that would lose something that was set by hand: it waits for a yes, and nothing has changed. */
export interface PendingQuestion {
  /** What would be lost, with old and new. */
  readonly says: string;
  /** What going on does: `Change it and lose that`. */
  readonly yes: string;
  /** What is done then; it may be a conflict that waits in its turn. */
  readonly step: Plan;
}
