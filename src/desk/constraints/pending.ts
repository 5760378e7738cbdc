/** Constraints that are not in the course: drafts, suggestions, and a change that waits until a conflict is resolved. */
import type { Constraint } from '../../core/constraints/constraint.ts';
import type { Conflict } from '../../core/course/conflict.ts';
import type { Course } from '../../core/course/course.ts';
import type { NonEmpty } from '../../core/solve/problem.ts';

/** A constraint that does not exist yet. */
export type DraftConstraint = Omit<Constraint, 'id'>;

/** A change that cannot be made because what would be kept cannot all hold; nothing has changed. */
export interface PendingConflict {
  readonly says: string;
  readonly conflicts: NonEmpty<Conflict>;
  /** The course with the change in it and nothing moved. */
  readonly asked: Course;
  readonly staying: string | null;
  readonly label: string;
  readonly said: string;
}

/** Something to keep, said as what pressing its button does: "Keep these two 6' apart". */
export interface KeepSuggestion {
  readonly says: string;
  readonly draft: DraftConstraint;
}
