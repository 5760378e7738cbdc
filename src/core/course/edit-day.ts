/** Edits of the day: its classes in running order, its breaks, and when it starts. A course without a day is given one. */
import { castDraft, type Draft, produce } from 'immer';
import type { Seconds } from '../measure/quantity.ts';
import type { Course, Day, DayBreak, DayClass } from './course.ts';
import { entryCount } from './entry-count.ts';
import { freeId } from './ids.ts';

/** Eight in the morning: estimate. */
const USUAL_START: Seconds = 8 * 3600;
/** Noon, for three quarters of an hour: estimate. */
const USUAL_BREAK = { title: 'Break', from: 12 * 3600, length: 2700 } as const;

function editDay(course: Course, recipe: (day: Draft<Day>) => void): Course {
  return produce(course, (draft) => {
    draft.day ??= { starts: USUAL_START, classes: [], breaks: [] };
    recipe(draft.day);
  });
}

function byId<Found extends { readonly id: string }>(list: readonly Found[], id: string, what: string): Found {
  const found = list.find((each) => each.id === id);
  if (found === undefined) throw new Error(`the day has no ${what} ${id}`);
  return found;
}

/** Sets what is given; what is given as undefined is taken away. */
function assign<Target extends object>(target: Target, change: Readonly<Record<string, unknown>>): void {
  for (const [field, value] of Object.entries(change)) {
    if (value === undefined) Reflect.deleteProperty(target, field);
    else Reflect.set(target, field, value);
  }
}

/** What of an item is to change; `undefined` takes an optional field away. */
type Change<Item> = { readonly [Field in keyof Omit<Item, 'id'>]?: Item[Field] | undefined };

/**
 * One class more, last in the running order. What is not given is taken from the class of the course. Throws when there is
 * no such layout.
 */
export function addClass(course: Course, given: { readonly layout: string } & Change<DayClass>): Course {
  if (!course.layouts.some(({ id }) => id === given.layout))
    throw new Error(`the course has no layout ${given.layout}`);
  const { title, level } = course.class;
  const entries = entryCount(course.class);
  return editDay(course, ({ classes }) => {
    const id = freeId(
      'class',
      classes.map((each) => each.id),
    );
    const made = { id, layout: given.layout, title: title === '' ? 'Class' : title, level, entries };
    assign(made, given);
    classes.push(castDraft(made));
  });
}

/** Takes a class out of the day. Throws when there is none. */
export function removeClass(course: Course, id: string): Course {
  return editDay(course, ({ classes }) => {
    classes.splice(classes.indexOf(byId(classes, id, 'class')), 1);
  });
}

/** Rides a class as the `to`-th of the day, 0 first; beyond the end is last. Throws when there is none. */
export function moveClass(course: Course, id: string, to: number): Course {
  return editDay(course, ({ classes }) => {
    const from = classes.indexOf(byId(classes, id, 'class'));
    const place = Math.max(0, Math.min(classes.length - 1, Math.round(to)));
    if (place !== from) classes.splice(place, 0, ...classes.splice(from, 1));
  });
}

/** Puts the classes into an order, given by all of their ids. Throws when it is not an order of the classes. */
export function orderClasses(course: Course, ids: readonly string[]): Course {
  return editDay(course, (day) => {
    const isOrder = ids.length === day.classes.length && new Set(ids).size === ids.length;
    if (!isOrder) throw new Error(`orderClasses: ${ids.join(', ')} is no order of ${day.classes.length} classes`);
    const ordered = ids.map((id) => byId(day.classes, id, 'class'));
    if (ordered.some((each, i) => each !== day.classes[i])) day.classes = ordered;
  });
}

/** Changes a class. Throws when there is none, or no such layout. */
export function changeClass(course: Course, id: string, change: Change<DayClass>): Course {
  const { layout } = change;
  if (layout !== undefined && !course.layouts.some((each) => each.id === layout)) {
    throw new Error(`the course has no layout ${layout}`);
  }
  return editDay(course, ({ classes }) => assign(byId(classes, id, 'class'), change));
}

/** Changes when the day starts and what rest riders need; an undefined rest is the usual one. */
export function changeDay(
  course: Course,
  change: { readonly starts?: Seconds; readonly restBetween?: Seconds | undefined },
): Course {
  return editDay(course, (day) => assign(day, change));
}

/** One break more; what is not given is usual. The breaks stay in the order of their times. */
export function addBreak(course: Course, given: Change<DayBreak> = {}): Course {
  return editDay(course, ({ breaks }) => {
    const id = freeId(
      'break',
      breaks.map((each) => each.id),
    );
    const made = { id, ...USUAL_BREAK };
    assign(made, given);
    breaks.push(made);
    breaks.sort((a, b) => a.from - b.from);
  });
}

/** Changes a break. Throws when there is none. */
export function changeBreak(course: Course, id: string, change: Change<DayBreak>): Course {
  return editDay(course, ({ breaks }) => {
    assign(byId(breaks, id, 'break'), change);
    breaks.sort((a, b) => a.from - b.from);
  });
}

/** Takes a break away. Throws when there is none. */
export function removeBreak(course: Course, id: string): Course {
  return editDay(course, ({ breaks }) => {
    breaks.splice(breaks.indexOf(byId(breaks, id, 'break')), 1);
  });
}

/** The course without a plan of the day. */
export function removeDay(course: Course): Course {
  return produce(course, (draft) => {
    delete draft.day;
  });
}
