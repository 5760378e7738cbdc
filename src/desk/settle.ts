import type { Course } from '../core/course/course.ts';
import { posed } from '../core/course/edits.ts';
import type { Pose } from '../core/plane/pose.ts';

/** A course in which a piece went where it was asked to, or why it cannot. */
export type Settled =
  | { readonly kind: 'settled'; readonly course: Course }
  | { readonly kind: 'stuck'; readonly why: string };

/** Puts one piece at a pose on the ground. */
export function pieceSettled(course: Course, key: string, options: { pose: Pose; name: string }): Settled {
  return { kind: 'settled', course: posed(course, key, options.pose) };
}
