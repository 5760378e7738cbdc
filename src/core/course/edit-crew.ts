import { produce } from 'immer';
import type { Course, CrewChoice } from './course.ts';

/** The course with another crew; `undefined` is the usual one again. */
export function setCrew(course: Course, crew: CrewChoice | undefined): Course {
  return produce(course, (draft) => {
    if (crew === undefined) delete draft.crew;
    else draft.crew = crew;
  });
}
