import { type Course, currentLayout } from '../core/course/course.ts';
import { changedLayout } from '../core/course/edits.ts';
import { settled } from '../core/course/settled.ts';
import type { Pose } from '../core/plane/pose.ts';

/** A course in which a piece went where it was asked to, or why it cannot. */
export type Settled =
  | { readonly kind: 'settled'; readonly course: Course }
  | { readonly kind: 'stuck'; readonly why: string };

/** Puts one piece at a pose on the ground, with everything that is held still holding. */
export function pieceSettled(course: Course, key: string, options: { pose: Pose; name: string }): Settled {
  const outcome = settled(currentLayout(course), course.arena, new Map([[key, options.pose]]));
  if (outcome.kind !== 'settled') return { kind: 'stuck', why: outcome.kind };
  return { kind: 'settled', course: changedLayout(course, () => outcome.layout) };
}
