import type { ClassEntry, Course, DayClass } from './course.ts';
import { entryCount } from './entry-count.ts';

/** The class of the day that the course's own class is: the one of its title, on the shown layout where there are several. */
export function dayClassOf({ day, current, class: { title } }: Course): DayClass | undefined {
  if (title.trim() === '') return undefined;
  const named = (day?.classes ?? []).filter((each) => each.title.trim() === title.trim());
  return named.find(({ layout }) => layout === current) ?? named[0];
}

/** What is known of who rides a class of the day: the one that is the course's own has the course's list. */
export function listingOf(course: Course, of: DayClass): Pick<ClassEntry, 'entries' | 'list' | 'drawn'> {
  return course.class.list !== undefined && dayClassOf(course) === of ? course.class : of;
}

/** How many ride a class of the day. */
export function dayEntryCount(course: Course, of: DayClass): number {
  return entryCount(listingOf(course, of));
}
