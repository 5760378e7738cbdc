import type { Course, DayClass } from './course.ts';
import { entryCount } from './entry-count.ts';

/** The class of the day that the course's own class is: the one that rides the shown layout, by its title where several do. */
export function dayClassOf({ day, current, class: of }: Course): DayClass | undefined {
  const riding = (day?.classes ?? []).filter(({ layout }) => layout === current);
  const named = riding.filter(({ title }) => title === of.title);
  return named[0] ?? (riding.length === 1 ? riding[0] : undefined);
}

/** How many ride a class of the day: the one that is the course's own has its list. */
export function dayEntryCount(course: Course, of: DayClass): number {
  return course.class.list !== undefined && dayClassOf(course) === of ? entryCount(course.class) : of.entries;
}
