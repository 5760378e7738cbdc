import novice from '../../../seeds/starters/larkhollow-novice.course.json';
import type { Course } from '../../core/course/course.ts';

/**
 * The starter that a first visit opens. It comes with the program, so that it is taken as it is: what reads files is not
 * in the first load. A test holds it against what the reader makes of the file.
 */
// The types of a JSON module are wider: any text where a course has one of some words.
export const FIRST_COURSE = novice as unknown as Course;
