import type { Course } from '../../core/course/course.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { SetOutQuestion } from '../change/plan-questions.ts';

/** The same object for the same course, so that the panel and the companion ask it once. */
export const setOutQuestion = memoizeByIdentity((course: Course): SetOutQuestion => ({ kind: 'set-out', course }));
