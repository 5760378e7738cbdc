import type { Course } from '../course/course.ts';
import { DEFAULT_CREW } from '../course/course.ts';
import { feet } from '../measure/quantity.ts';
import type { SetOutCrew } from './setout.ts';

/** Who sets a course out: its crew with its tapes; where it names none, one tape of 100 ft or 30 m in the course's own unit. */
export function setOutCrewOf({ crew = DEFAULT_CREW, unit }: Pick<Course, 'crew' | 'unit'>): SetOutCrew {
  const { people, tapes = 1, marked = unit, rightAngle = 'three-four-five' } = crew;
  return { people, tapes, marked, rightAngle, tape: crew.tape ?? (marked === 'ft' ? feet(100) : 30) };
}
