/** Edits of who rides the class: the list in the order of go, scratches, lateness, and when the first go begins. */
import { castDraft, type Draft, produce } from 'immer';
import type { Seconds } from '../measure/quantity.ts';
import { type ClassEntry, type Course, type Draw, type Entry, MOST_ENTRIES } from './course.ts';

/** An entry before it has a place in a list. */
export type NewEntry = Omit<Entry, 'id'>;

/** What of an entry is to change; `undefined` takes an optional field away. */
export type EntryChange = { readonly [Field in keyof NewEntry]?: NewEntry[Field] | undefined };

function editClass(course: Course, recipe: (entry: Draft<ClassEntry>) => void): Course {
  return produce(course, (draft) => recipe(draft.class));
}

function entryIn(list: Draft<Entry>[] | undefined, id: string): Draft<Entry> {
  const found = list?.find((each) => each.id === id);
  if (found === undefined) throw new Error(`the class has no entry ${id}`);
  return found;
}

/** New ids, none of which is taken. */
function freshIds(taken: ReadonlySet<string>): () => string {
  let number = 0;
  return () => {
    do number += 1;
    while (taken.has(`entry-${number}`));
    return `entry-${number}`;
  };
}

function withList(course: Course, list: readonly Entry[]): Course {
  if (list.length > MOST_ENTRIES) {
    throw new Error(`withList: ${list.length} entries; a class has at most ${MOST_ENTRIES}`);
  }
  return editClass(course, (entry) => {
    entry.list = castDraft([...list]);
    delete entry.drawn;
  });
}

/** Adds entries at the end of the list. Throws where there would be more than a class may have. */
export function addEntries(course: Course, given: readonly NewEntry[]): Course {
  if (given.length === 0) return course;
  const before = course.class.list ?? [];
  const fresh = freshIds(new Set(before.map(({ id }) => id)));
  return withList(course, [...before, ...given.map((entry) => ({ id: fresh(), ...entry }))]);
}

/**
 * The class with only these entries. One that was there before, by its number, or else by rider and horse, keeps its id, because
 * a score card knows it by that. Throws where there are more than a class may have.
 */
export function replaceEntries(course: Course, given: readonly NewEntry[]): Course {
  if (given.length === 0) return clearEntries(course);
  const before = course.class.list ?? [];
  const fresh = freshIds(new Set(before.map(({ id }) => id)));
  const left = new Set(before);
  const kept = new Map<NewEntry, string>();
  const keep = (isSame: (a: NewEntry, b: NewEntry) => boolean): void => {
    for (const entry of given) {
      const found = kept.has(entry) ? undefined : [...left].find((each) => isSame(each, entry));
      if (found === undefined) continue;
      kept.set(entry, found.id);
      left.delete(found);
    }
  };
  keep((a, b) => a.number === b.number && a.rider === b.rider && a.horse === b.horse);
  keep((a, b) => a.number !== '' && a.number === b.number);
  keep((a, b) => a.rider !== '' && a.rider === b.rider && a.horse === b.horse);
  return withList(
    course,
    given.map((entry) => ({ id: kept.get(entry) ?? fresh(), ...entry })),
  );
}

/** Only the number of entries is known, as it was given. */
export function clearEntries(course: Course): Course {
  if (course.class.list === undefined) return course;
  return editClass(course, (entry) => {
    delete entry.list;
    delete entry.drawn;
  });
}

/** Changes an entry. Throws when there is none. */
export function changeEntry(course: Course, id: string, change: EntryChange): Course {
  return editClass(course, ({ list }) => {
    const entry = entryIn(list, id);
    for (const [field, value] of Object.entries(change)) {
      if (value === undefined) Reflect.deleteProperty(entry, field);
      else Reflect.set(entry, field, value);
    }
  });
}

/** Takes an entry out of the list; with the last one the list goes too. Throws when there is none. */
export function removeEntry(course: Course, id: string): Course {
  if (course.class.list?.length === 1) {
    entryIn(castDraft([...course.class.list]), id);
    return clearEntries(course);
  }
  return editClass(course, (entry) => {
    const gone = entryIn(entry.list, id);
    entry.list = entry.list?.filter((each) => each !== gone) ?? [];
    delete entry.drawn;
  });
}

/** Lets an entry go as the `to`-th of the list, 0 first; beyond the end is last. Throws when there is none. */
export function moveEntry(course: Course, id: string, to: number): Course {
  const { list } = course.class;
  const from = list?.findIndex((each) => each.id === id) ?? -1;
  if (list === undefined || from < 0) throw new Error(`the class has no entry ${id}`);
  const place = Math.max(0, Math.min(list.length - 1, Math.round(to)));
  if (place === from) return course;
  return editClass(course, (entry) => {
    entry.list?.splice(place, 0, ...entry.list.splice(from, 1));
    delete entry.drawn;
  });
}

/** Puts the list into an order, given by all of its ids, and says how it was drawn. Throws when it is not an order of it. */
export function orderEntries(course: Course, ids: readonly string[], drawn?: Draw): Course {
  const byId = new Map((course.class.list ?? []).map((each) => [each.id, each]));
  const ordered = ids.flatMap((id) => byId.get(id) ?? []);
  if (ordered.length !== byId.size || new Set(ids).size !== ids.length) {
    throw new Error(`orderEntries: ${ids.length} ids are no order of ${byId.size} entries`);
  }
  return editClass(course, (entry) => {
    entry.list = castDraft(ordered);
    if (drawn === undefined) delete entry.drawn;
    else entry.drawn = drawn;
  });
}

/** When the first go begins; undefined: as the day has it, or unknown. */
export function startClass(course: Course, starts: Seconds | undefined): Course {
  return editClass(course, (entry) => {
    if (starts === undefined) delete entry.starts;
    else entry.starts = starts;
  });
}
