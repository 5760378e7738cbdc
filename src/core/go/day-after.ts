import type { Course, DayClass } from '../course/course.ts';
import { dayClassOf } from '../course/day-class.ts';

/** The class of the day that is ridden after the course's own; undefined where it is the last, or not of a day. */
export function classAfter(course: Course): DayClass | undefined {
  const own = dayClassOf(course);
  if (own === undefined) return undefined;
  const classes = course.day?.classes ?? [];
  return classes[classes.indexOf(own) + 1];
}
