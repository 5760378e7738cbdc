import type { Course } from '../../course/course.ts';
import { survey } from '../../survey.ts';
import { findingsOf } from '../checks.ts';
import { unwaivedFindings } from './waived.ts';

/** What was done for one finding. */
export interface Fix {
  readonly finding: string;
  readonly said: string;
  readonly did: string;
}

export interface SafeFixes {
  readonly course: Course;
  readonly did: readonly Fix[];
  /** Ids of the findings that stay open. */
  readonly left: readonly string[];
}

/** No course has so many faults that one pass after the other would not end: a guard, not a limit. */
const MOST = 200;

/**
 * Applies what is safe, one fix after another, the heaviest finding first, and says what it did. Safe is a fix that only
 * brings a size to what is asked: it takes away nothing that the designer meant, and no new must or should comes with it.
 * Waived findings are left alone. A finding is worked on once, so that two fixes cannot chase each other.
 */
export function applySafeRemedies(course: Course): SafeFixes {
  const did: Fix[] = [];
  const seen = new Set<string>();
  let now = course;
  for (let i = 0; i < MOST; i += 1) {
    const open = unwaivedFindings(findingsOf(survey(now)));
    const next = open.find(({ id }) => !seen.has(id));
    if (next === undefined) return { course: now, did, left: open.map(({ id }) => id) };
    seen.add(next.id);
    const remedy = next.remedies.find(({ safe }) => safe === true);
    if (remedy === undefined) continue;
    now = remedy.apply(now);
    did.push({ finding: next.id, said: next.says, did: remedy.says });
  }
  return { course: now, did, left: unwaivedFindings(findingsOf(survey(now))).map(({ id }) => id) };
}
