/**
 * Edits of who rides a class: the list in the order of go, scratches, lateness, and when the first go begins. Each is about the
 * course's own class, or about one of its day.
 */
import { castDraft, type Draft, produce } from 'immer';
import type { Seconds } from '../measure/quantity.ts';
import { type ClassEntry, type Course, type DayClass, type Draw, type Entry, MOST_ENTRIES } from './course.ts';
import { changeClass } from './edit-day.ts';

/** An entry before it has a place in a list. */
export type NewEntry = Omit<Entry, 'id'>;

/** What of an entry is to change; `undefined` takes an optional field away. */
export type EntryChange = { readonly [Field in keyof NewEntry]?: NewEntry[Field] | undefined };

/** Which class is meant: one of the day by its id, or the course's own. */
export type ClassChoice = string | undefined;

type Listing = Pick<ClassEntry, 'entries' | 'list' | 'drawn'>;

function isMeant(of: ClassChoice): (each: Pick<DayClass, 'id'>) => boolean {
  return ({ id }) => id === of;
}

/** Who rides a class. Throws when the day has no such class. */
export function listing(course: Course, of?: ClassChoice): Listing {
  const found = of === undefined ? course.class : course.day?.classes.find(isMeant(of));
  if (found === undefined) throw new Error(`the day has no class ${of}`);
  return found;
}

function editListing(course: Course, of: ClassChoice, recipe: (entry: Draft<Listing>) => void): Course {
  listing(course, of);
  return produce(course, (draft) => {
    const found = of === undefined ? draft.class : draft.day?.classes.find(isMeant(of));
    if (found !== undefined) recipe(found);
  });
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

function withList(course: Course, list: readonly Entry[], of: ClassChoice): Course {
  if (list.length > MOST_ENTRIES) {
    throw new Error(`withList: ${list.length} entries; a class has at most ${MOST_ENTRIES}`);
  }
  return editListing(course, of, (entry) => {
    entry.list = castDraft([...list]);
    delete entry.drawn;
  });
}

/** Adds entries at the end of the list. Throws where there would be more than a class may have. */
export function addEntries(course: Course, given: readonly NewEntry[], of?: ClassChoice): Course {
  if (given.length === 0) return course;
  const before = listing(course, of).list ?? [];
  const fresh = freshIds(new Set(before.map(({ id }) => id)));
  return withList(course, [...before, ...given.map((entry) => ({ id: fresh(), ...entry }))], of);
}

/**
 * The class with only these entries. One that was there before, by its number, or else by rider and horse, keeps its id, because
 * a score card knows it by that. Throws where there are more than a class may have.
 */
export function replaceEntries(course: Course, given: readonly NewEntry[], of?: ClassChoice): Course {
  if (given.length === 0) return clearEntries(course, of);
  const before = listing(course, of).list ?? [];
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
    of,
  );
}

/** Only the number of entries is known, as it was given. */
export function clearEntries(course: Course, of?: ClassChoice): Course {
  if (listing(course, of).list === undefined) return course;
  return editListing(course, of, (entry) => {
    delete entry.list;
    delete entry.drawn;
  });
}

/** Changes an entry. Throws when there is none. */
export function changeEntry(course: Course, id: string, change: EntryChange, of?: ClassChoice): Course {
  return editListing(course, of, ({ list }) => {
    const entry = entryIn(list, id);
    for (const [field, value] of Object.entries(change)) {
      if (value === undefined) Reflect.deleteProperty(entry, field);
      else Reflect.set(entry, field, value);
    }
  });
}

/** Takes an entry out of the list; with the last one the list goes too. Throws when there is none. */
export function removeEntry(course: Course, id: string, of?: ClassChoice): Course {
  const { list } = listing(course, of);
  if (list?.length === 1) {
    entryIn(castDraft([...list]), id);
    return clearEntries(course, of);
  }
  return editListing(course, of, (entry) => {
    const gone = entryIn(entry.list, id);
    entry.list = entry.list?.filter((each) => each !== gone) ?? [];
    delete entry.drawn;
  });
}

/** Lets an entry go as the `to`-th of the list, 0 first; beyond the end is last. Throws when there is none. */
export function moveEntry(course: Course, id: string, to: number, of?: ClassChoice): Course {
  const { list } = listing(course, of);
  const from = list?.findIndex((each) => each.id === id) ?? -1;
  if (list === undefined || from < 0) throw new Error(`the class has no entry ${id}`);
  const place = Math.max(0, Math.min(list.length - 1, Math.round(to)));
  if (place === from) return course;
  return editListing(course, of, (entry) => {
    entry.list?.splice(place, 0, ...entry.list.splice(from, 1));
    delete entry.drawn;
  });
}

/** How a list comes into another order: whether it was drawn, and of which class. */
export interface Ordering {
  readonly drawn?: Draw;
  readonly of?: ClassChoice;
}

/** Puts the list into an order, given by all of its ids. Throws when it is not an order of it. */
export function orderEntries(course: Course, ids: readonly string[], { drawn, of }: Ordering = {}): Course {
  const byId = new Map((listing(course, of).list ?? []).map((each) => [each.id, each]));
  const ordered = ids.flatMap((id) => byId.get(id) ?? []);
  if (ordered.length !== byId.size || new Set(ids).size !== ids.length) {
    throw new Error(`orderEntries: ${ids.length} ids are no order of ${byId.size} entries`);
  }
  return editListing(course, of, (entry) => {
    entry.list = castDraft(ordered);
    if (drawn === undefined) delete entry.drawn;
    else entry.drawn = drawn;
  });
}

/** When the first go begins; undefined: as the day has it, or unknown. Of a class of the day it is before when it may not begin. */
export function startClass(course: Course, starts: Seconds | undefined, of?: ClassChoice): Course {
  if (of !== undefined) return changeClass(course, of, { startsAt: starts });
  return produce(course, (draft) => {
    if (starts === undefined) delete draft.class.starts;
    else draft.class.starts = starts;
  });
}
