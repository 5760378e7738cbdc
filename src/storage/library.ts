import type { Course } from '../core/course/course.ts';
import { type CourseReading, readCourse } from '../core/files/read.ts';
import { writeCourse } from '../core/files/write.ts';
import { databaseStore } from './database.ts';
import { failureName, failureWords, type Trouble } from './failure.ts';
import { type Kept, memoryStore, type Store } from './store.ts';

/** A kept course in a list, without its text. `saved`: milliseconds since 1970. */
export interface KeptCourse {
  readonly slot: string;
  readonly title: string;
  readonly saved: number;
}

/** An earlier state of a kept course. */
export interface EarlierCourse {
  readonly number: number;
  readonly saved: number;
}

/** The courses kept in this browser, by slot. Nothing here rejects. */
export interface Library {
  /** `memory`: only as long as the page is open; `note` says why. */
  readonly keeps: 'browser' | 'memory';
  readonly note: Trouble;
  /** What went wrong last and what to do; nothing once something has gone right again. */
  trouble(): Trouble;
  /** The course that was saved last and can be read; where it cannot, an earlier state of it. */
  latest(): Promise<Course | undefined>;
  /** Keeps a course that can be opened again; one that cannot does not take the place of one that can. */
  keep(course: Course, slot?: string): Promise<Trouble>;
  /** The last saved first. */
  courses(): Promise<readonly KeptCourse[]>;
  load(slot: string): Promise<CourseReading>;
  forget(slot: string): Promise<Trouble>;
  /** The newest first. */
  earlier(slot: string): Promise<readonly EarlierCourse[]>;
  loadEarlier(slot: string, number: number): Promise<CourseReading>;
}

/** The slot of the course on the table, for those who keep only one. */
export const TABLE = 'table';

export interface LibraryOptions {
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  /** Asks the browser to spare what is kept when it needs room. Whatever it answers, courses are kept all the same. */
  readonly persist?: () => Promise<unknown>;
}

/** Asks the browser, where it can be asked: pages that are not secure and old browsers have nobody to ask. */
async function browserPersist(): Promise<unknown> {
  return globalThis.navigator?.storage?.persist?.();
}

/** Opens the browser's library; one in memory, with the reason, where the browser has or allows none. */
export async function openLibrary(options: LibraryOptions = {}): Promise<Library> {
  const { now = Date.now, persist = browserPersist } = options;
  const inMemory = (why: string) => libraryOn(memoryStore(), { keeps: 'memory', note: why, now });
  if (typeof indexedDB === 'undefined') {
    return inMemory('This browser keeps nothing between visits. Save the course to a file before you close the page.');
  }
  try {
    return libraryOn(await databaseStore(), { keeps: 'browser', note: undefined, now, persist });
  } catch (failure) {
    return inMemory(`${failureWords(failure)} Until then it is kept only while this page is open.`);
  }
}

/** The text of a record from outside; damaged records have none. */
function textOf(record: { readonly text?: unknown } | undefined): string | undefined {
  return typeof record?.text === 'string' ? record.text : undefined;
}

function readRecord(record: { readonly text?: unknown } | undefined, what: string): CourseReading {
  if (record === undefined) return { kind: 'refused', why: `There is no kept ${what}.` };
  const text = textOf(record);
  if (text === undefined) return { kind: 'refused', why: `The kept ${what} is damaged: it has no text.` };
  const reading = readCourse(text);
  if (reading.kind === 'read') return reading;
  return { kind: 'refused', why: `The kept ${what} cannot be read. ${reading.why}` };
}

/** A library over a store. Exported for tests, which bring stores that fail. */
export function libraryOn(
  store: Store,
  { keeps, note, now, persist }: Pick<Library, 'keeps' | 'note'> & LibraryOptions & { readonly now: () => number },
): Library {
  let trouble: Trouble;
  let asked = false;

  /** Asked with the first course that is kept, as some browsers ask the person: there is something to lose then. */
  function askToPersist(): void {
    if (asked) return;
    asked = true;
    persist?.().catch(() => undefined);
  }

  /** What the work gives, or the other answer with the failure remembered. */
  async function tried<T>(work: () => Promise<T>, otherwise: (why: string) => T): Promise<T> {
    try {
      const result = await work();
      trouble = undefined;
      return result;
    } catch (failure) {
      trouble = failureWords(failure);
      return otherwise(trouble);
    }
  }

  const refused = (why: string): CourseReading => ({ kind: 'refused', why });
  const newestFirst = async () => [...(await store.all())].sort((a, b) => b.saved - a.saved);
  const versions = async (slot: string) => [...(await store.versions(slot))].reverse();

  async function put(record: Kept): Promise<void> {
    try {
      await store.put(record);
    } catch (failure) {
      if (failureName(failure) !== 'QuotaExceededError') throw failure;
      // The last state is worth more than the earlier ones.
      await store.dropVersions();
      await store.put(record);
    }
  }

  /** The newest state of a record that can be read, and why newer ones could not. */
  async function readable(record: Kept): Promise<{ readonly course?: Course; readonly why?: string }> {
    const last = readRecord(record, `course "${record.title}"`);
    if (last.kind === 'read') return { course: last.course };
    for (const version of await versions(record.slot)) {
      const reading = readRecord(version, 'earlier state');
      if (reading.kind === 'read') return { course: reading.course, why: `${last.why} An earlier state is shown.` };
    }
    return { why: last.why };
  }

  return {
    keeps,
    note,
    trouble: () => trouble,
    async latest() {
      const whys: string[] = [];
      const course = await tried<Course | undefined>(
        async () => {
          for (const record of await newestFirst()) {
            const { course, why } = await readable(record);
            if (why !== undefined) whys.push(why);
            if (course !== undefined) return course;
          }
          return undefined;
        },
        () => undefined,
      );
      if (whys.length > 0) trouble = whys.join(' ');
      return course;
    },
    keep: (course, slot = TABLE) =>
      tried<Trouble>(
        async () => {
          const text = writeCourse(course);
          const again = readCourse(text);
          if (again.kind === 'refused') return `The course was not kept, as it could not be opened again. ${again.why}`;
          await put({ slot, title: course.title, saved: now(), text });
          askToPersist();
          return undefined;
        },
        (why) => why,
      ),
    courses: () =>
      tried<readonly KeptCourse[]>(
        async () => (await newestFirst()).map(({ slot, title, saved }) => ({ slot, title, saved })),
        () => [],
      ),
    load: (slot) => tried(async () => readRecord(await store.one(slot), `course in the slot "${slot}"`), refused),
    forget: (slot) =>
      tried<Trouble>(
        async () => {
          await store.forget(slot);
          return undefined;
        },
        (why) => why,
      ),
    earlier: (slot) =>
      tried<readonly EarlierCourse[]>(
        async () => (await versions(slot)).map(({ number, saved }) => ({ number, saved })),
        () => [],
      ),
    loadEarlier: (slot, number) =>
      tried(async () => {
        const found = (await store.versions(slot)).find((version) => version.number === number);
        return readRecord(found, `state ${number} of "${slot}"`);
      }, refused),
  };
}
