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

/** A guard against an endless loop; no real course needs so many passes. */
const MOST = 200;

/**
 * Applies the safe fixes one after another, the most severe finding first, and lists what it did. A fix is safe when it
 * only brings a size into its band, removes nothing that the designer chose, and causes no new must or should. Waived
 * findings are left alone. Each finding is worked on once, so that two fixes cannot undo each other for ever.
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
