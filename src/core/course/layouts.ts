/** Edits of the list of layouts: a course holds several alternatives, and one is shown. */
import { type Course, currentLayout, type Layout } from './course.ts';
import { freeId } from './keys.ts';

function layoutById(course: Course, id: string): Layout {
  const found = course.layouts.find((layout) => layout.id === id);
  if (found === undefined) throw new Error(`the course has no layout ${id}`);
  return found;
}

/** A copy of the current layout, shown. Its obstacles are the same objects until one is edited. */
export function layoutCopied(course: Course, title?: string): Course {
  const original = currentLayout(course);
  const id = freeId(
    'layout',
    course.layouts.map((layout) => layout.id),
  );
  const copy: Layout = { ...original, id, title: title ?? `${original.title}, copy` };
  return { ...course, layouts: [...course.layouts, copy], current: id };
}

/** The course without a layout; its neighbour is shown if it was. The last one stays: a course has always one. */
export function layoutErased(course: Course, id: string): Course {
  const gone = layoutById(course, id);
  const [first, ...rest] = course.layouts.filter((layout) => layout !== gone);
  if (first === undefined) return course;
  const place = course.layouts.indexOf(gone);
  const neighbour = [first, ...rest][Math.max(0, place - 1)] ?? first;
  return { ...course, layouts: [first, ...rest], current: course.current === id ? neighbour.id : course.current };
}

/** The course with another layout shown. Throws when there is no such layout. */
export function layoutChosen(course: Course, id: string): Course {
  return layoutById(course, id).id === course.current ? course : { ...course, current: id };
}

export function layoutRenamed(course: Course, id: string, title: string): Course {
  const old = layoutById(course, id);
  if (old.title === title) return course;
  const named = (layout: Layout): Layout => (layout === old ? { ...layout, title } : layout);
  const [first, ...rest] = course.layouts;
  return { ...course, layouts: [named(first), ...rest.map(named)] };
}
