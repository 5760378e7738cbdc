/**
 * Edits of the list of layouts, of which one is shown, and the two ways to edit the shown one. All edits are pure
 * functions from course to course. What an edit does not touch stays the same object, so that cached results stay
 * valid; an edit that changes nothing returns the course itself. Edited courses are frozen.
 */
import { castDraft, type Draft, produce } from 'immer';
import { type Course, currentLayout, type Layout } from './course.ts';
import { freeId } from './ids.ts';

/** The course with another value in the place of its current layout. */
export function replaceLayout(course: Course, change: (layout: Layout) => Layout): Course {
  const current = currentLayout(course);
  const next = change(current);
  return produce(course, ({ layouts }) => {
    layouts[course.layouts.indexOf(current)] = castDraft(next);
  });
}

/** The course with its current layout written to: the recipe may change the draft in place. */
export function editCurrentLayout(course: Course, recipe: (layout: Draft<Layout>) => void): Course {
  return replaceLayout(course, (layout) => produce(layout, recipe));
}

function layoutIndex(course: Course, id: string): number {
  const place = course.layouts.findIndex((layout) => layout.id === id);
  if (place < 0) throw new Error(`the course has no layout ${id}`);
  return place;
}

/** A copy of the current layout, shown. Its obstacles are the same objects until one is edited. */
export function copyLayout(course: Course, title?: string): Course {
  const original = currentLayout(course);
  const id = freeId(
    'layout',
    course.layouts.map((layout) => layout.id),
  );
  return produce(course, (draft) => {
    draft.layouts.push(castDraft({ ...original, id, title: title ?? `${original.title}, copy` }));
    draft.current = id;
  });
}

/**
 * The course without a layout; its neighbour is shown if it was. The classes of the day that rode it go with it. The last
 * one stays: a course has always one.
 */
export function eraseLayout(course: Course, id: string): Course {
  const index = layoutIndex(course, id);
  return produce(course, (draft) => {
    if (draft.layouts.length === 1) return;
    draft.layouts.splice(index, 1);
    const neighbour = draft.layouts[Math.max(0, index - 1)] ?? draft.layouts[0];
    if (draft.current === id) draft.current = neighbour.id;
    const { day } = draft;
    if (day?.classes.some(({ layout }) => layout === id)) {
      day.classes = day.classes.filter(({ layout }) => layout !== id);
    }
  });
}

/** The course with another layout shown. Throws when there is no such layout. */
export function chooseLayout(course: Course, id: string): Course {
  layoutIndex(course, id);
  return produce(course, (draft) => {
    draft.current = id;
  });
}

export function renameLayout(course: Course, id: string, title: string): Course {
  const index = layoutIndex(course, id);
  return produce(course, ({ layouts }) => {
    const layout = layouts[index];
    if (layout !== undefined) layout.title = title;
  });
}
