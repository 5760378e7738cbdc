import { produce } from 'immer';
import type { Course } from '../../course/course.ts';
import type { Finding } from '../check.ts';

/** The course with a finding waived for a reason. A reason of blanks removes the waiver, as `unwaiveFinding` does. */
export function waiveFinding(course: Course, finding: string, reason: string): Course {
  const said = reason.trim();
  const others = (course.waived ?? []).filter((each) => each.finding !== finding);
  return withWaivers(course, said === '' ? others : [...others, { finding, reason: said }]);
}

/** The course with a finding open again. */
export function unwaiveFinding(course: Course, finding: string): Course {
  return waiveFinding(course, finding, '');
}

function withWaivers(course: Course, waivers: NonNullable<Course['waived']>): Course {
  return produce(course, (draft) => {
    if (waivers.length === 0) delete draft.waived;
    else draft.waived = [...waivers];
  });
}

/** Findings that nobody has waived. */
export function unwaivedFindings(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((finding) => finding.waived === undefined);
}
