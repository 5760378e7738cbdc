import type { ClassEntry, Course, Layout } from '../course/course.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import { type Survey, survey } from '../survey.ts';

/** The layout of a course by its id. Throws when there is none. */
export function layoutById(course: Course, id: string): Layout {
  const found = course.layouts.find((layout) => layout.id === id);
  if (found === undefined) throw new Error(`the course has no layout ${id}`);
  return found;
}

/** What a layout's survey depends on beside the layout and the class. */
type Setting = Pick<
  Course,
  'format' | 'version' | 'title' | 'unit' | 'arena' | 'truck' | 'horse' | 'rulebook' | 'waived' | 'notes' | 'crew'
>;

function settingOf(course: Course): Setting {
  const { format, version, title, unit, arena, truck, horse, rulebook, waived, notes, crew } = course;
  const whole = { format, version, title, unit, arena, truck, horse, rulebook, notes };
  return { ...whole, ...(waived === undefined ? {} : { waived }), ...(crew === undefined ? {} : { crew }) };
}

function isSameSetting(a: Setting, b: Setting): boolean {
  return (Object.keys({ ...a, ...b }) as (keyof Setting)[]).every((part) => a[part] === b[part]);
}

/** By layout and class: the course that has only these two. */
const coursesOf = memoizeByIdentity((_: Layout) => new WeakMap<ClassEntry, Course>());

/**
 * The survey of one layout of a course, ridden by its class or by another. The same layout, class and setting give the same
 * survey object, whatever else of the course is edited or shown; its course has this layout alone. Throws when there is no
 * such layout.
 */
export function layoutSurvey(course: Course, id: string, entry: ClassEntry = course.class): Survey {
  const layout = layoutById(course, id);
  const setting = settingOf(course);
  const known = coursesOf(layout).get(entry);
  if (known !== undefined && isSameSetting(setting, settingOf(known))) return survey(known);
  const made: Course = { ...setting, class: entry, layouts: [layout], current: layout.id };
  coursesOf(layout).set(entry, made);
  return survey(made);
}
