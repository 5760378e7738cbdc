/** The starter with a day of six classes over four layouts. */
import type { Course } from '../../../src/core/course/course.ts';
import { STARTERS } from '../ride/courses.ts';

export const DAY: Course = (() => {
  const found = STARTERS.find(([name]) => name === 'larkhollow-day.course.json')?.[1];
  if (found === undefined) throw new Error('the starter larkhollow-day is gone');
  return found;
})();
