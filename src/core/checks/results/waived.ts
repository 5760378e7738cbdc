import { produce } from 'immer';
import type { Course } from '../../course/course.ts';
import type { Finding } from '../check.ts';

/** The course with a finding waived for a reason. A reason of blanks removes the waiver. */
export function waiveFinding(course: Course, finding: string, reason: string): Course {
  const said = reason.trim();
  const others = (course.waived ?? []).filter((each) => each.finding !== finding);
  return withWaivers(course, said === '' ? others : [...others, { finding, reason: said }]);
}

/** The course with a finding open again: without the waivers that hold it, or those for its id where it is no longer found. */
export function unwaiveFinding(course: Course, { id, waivedBy = [id] }: Pick<Finding, 'id' | 'waivedBy'>): Course {
  return withWaivers(
    course,
    (course.waived ?? []).filter(({ finding }) => !waivedBy.includes(finding)),
  );
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
