/**
 * Edits of the list of layouts, of which one is shown, and the two ways to edit the shown one. All edits are pure
 * functions from course to course. What an edit does not touch stays the same object, so that cached results stay
 * valid; an edit that changes nothing returns the course itself. Edited courses are frozen.
 */
import { castDraft, type Draft, produce } from 'immer';
import { type Course, currentLayout, type Layout, LONGEST_NAME } from './course.ts';
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

/** `Novice, branch`, `Novice, branch (2)` …: what the name of a layout begins with, and the ending. */
const BRANCH = /, branch(?: \(\d+\))?$/;

/** The text without its last letters where it is longer than so many signs; no letter is cut in two. */
function shortened(text: string, most: number): string {
  const letters = [...text];
  let length = text.length;
  while (length > most) length -= letters.pop()?.length ?? length;
  return letters.join('');
}

/**
 * The title where no layout has it yet, otherwise the first of `title (2)`, `title (3)` … that is free. Where it would be longer
 * than a name may be, its end is left out.
 */
export function freeTitle(course: Course, title: string): string {
  const taken = new Set(course.layouts.map((layout) => layout.title));
  for (let count = 1; ; count += 1) {
    const ending = count === 1 ? '' : ` (${count})`;
    const made = shortened(title, LONGEST_NAME - ending.length) + ending;
    if (!taken.has(made)) return made;
  }
}

/** The course with one more layout at a place in the list, shown. It is given an id of its own. */
export function addLayout(course: Course, layout: Layout, place = course.layouts.length): Course {
  const id = freeId(
    'layout',
    course.layouts.map((each) => each.id),
  );
  return produce(course, (draft) => {
    draft.layouts.splice(place, 0, castDraft({ ...layout, id }));
    draft.current = id;
  });
}

/**
 * A branch of a layout, of the shown one where none is named: after it in the list, and shown. Its obstacles are the same
 * objects until one is edited. Without a title it is named for what it comes from.
 */
export function branchLayout(
  course: Course,
  { of = course.current, title }: { readonly of?: string; readonly title?: string } = {},
): Course {
  const index = layoutIndex(course, of);
  const original = course.layouts[index] ?? course.layouts[0];
  const stem = shortened(original.title.replace(BRANCH, ''), LONGEST_NAME - ', branch (100)'.length);
  const named = title ?? freeTitle(course, `${stem}, branch`);
  return addLayout(course, { ...original, title: named }, index + 1);
}

/** The course with a layout as the `to`-th of the list, 0 first; beyond the end is last. */
export function moveLayout(course: Course, id: string, to: number): Course {
  const from = layoutIndex(course, id);
  const place = Math.max(0, Math.min(course.layouts.length - 1, to));
  if (place === from) return course;
  return produce(course, ({ layouts }) => {
    layouts.splice(place, 0, ...layouts.splice(from, 1));
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
