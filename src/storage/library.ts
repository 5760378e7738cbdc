import type { Course } from '../core/course/course.ts';
import { type History, presentCourse, type RecalledSteps } from '../core/course/history.ts';
import type { CourseReading } from '../core/files/read.ts';
import { writeCourse } from '../core/files/write.ts';
import { databaseStore } from './database.ts';
import { type ErrorMessage, failureWords } from './failure.ts';
import { keptHistories } from './kept-history.ts';
import { readCourseText } from './reader.ts';
import type { Pause } from './recall.ts';
import { memoryStore, type SavedRecord, type Store } from './store.ts';
import { readBackup, writeBackup } from './unload-backup.ts';

/** A kept course in a list, without its text. `saved`: milliseconds since 1970. */
export interface SavedCourse {
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
  readonly storedIn: 'browser' | 'memory';
  readonly note: ErrorMessage;
  /** The last error and what to do; nothing once an operation has succeeded again. */
  lastError(): ErrorMessage;
  /** The course that was saved last and can be read; where it cannot, an earlier state of it. */
  latest(): Promise<Course | undefined>;
  /**
   * Saves a course that can be opened again, with the steps of its history; one that cannot does not replace one that
   * can. Where there is no room the history goes before the course.
   */
  save(history: History, slot?: string): Promise<ErrorMessage>;
  /** The last saved first. */
  courses(): Promise<readonly SavedCourse[]>;
  /** Reads a course to go on with it: what is saved to its slot then goes on with its history. */
  load(slot: string): Promise<CourseReading>;
  /** Reads a course to look at it. */
  read(slot: string): Promise<CourseReading>;
  /** The steps around the course that was loaded from the slot last; undefined when there are none. */
  recall(slot: string, pause?: Pause): Promise<RecalledSteps | undefined>;
  /** What a save would write, as a text for a page that closes and cannot wait. */
  backup(history: History, slot: string): string;
  /** Saves what a backup holds, and loads it; undefined when it cannot be read. `isSaved`: it is in the library now. */
  restore(backup: string): Promise<{ slot: string; course: Course; isSaved: boolean } | undefined>;
  remove(slot: string): Promise<ErrorMessage>;
  /** The newest first. */
  earlier(slot: string): Promise<readonly EarlierCourse[]>;
  loadEarlier(slot: string, number: number): Promise<CourseReading>;
}

/** The slot of the open course, for callers that keep only one. */
export const CURRENT_SLOT = 'table';

export interface LibraryOptions {
  /** Milliseconds since 1970. */
  readonly now?: () => number;
  /**
   * Asks the browser not to delete what is saved when it needs space. Whatever it answers, courses are saved all the
   * same.
   */
  readonly persist?: () => Promise<unknown>;
}

/** Asks the browser where it can be asked: insecure pages and old browsers do not offer it. */
async function browserPersist(): Promise<unknown> {
  return globalThis.navigator?.storage?.persist?.();
}

/** Opens the browser's library; one in memory, with the reason, where the browser has or allows none. */
export async function openLibrary(options: LibraryOptions = {}): Promise<Library> {
  const { now = Date.now, persist = browserPersist } = options;
  const inMemory = (why: string) => libraryOn(memoryStore(), { storedIn: 'memory', note: why, now });
  if (typeof indexedDB === 'undefined') {
    return inMemory('This browser keeps nothing between visits. Save the course to a file before you close the page.');
  }
  try {
    return libraryOn(await databaseStore(), { storedIn: 'browser', note: undefined, now, persist });
  } catch (failure) {
    return inMemory(`${failureWords(failure)} Until then it is here only while this page is open.`);
  }
}

/** The text of a record from outside; damaged records have none. */
function textOf(record: { readonly text?: unknown } | undefined): string | undefined {
  return typeof record?.text === 'string' ? record.text : undefined;
}

function slotWords(slot: string): string {
  return `course in the slot "${slot}"`;
}

async function readRecord(record: { readonly text?: unknown } | undefined, what: string): Promise<CourseReading> {
  if (record === undefined) return { kind: 'refused', why: `There is no ${what}.` };
  const text = textOf(record);
  if (text === undefined) return { kind: 'refused', why: `The ${what} is damaged: it has no text.` };
  const reading = await readCourseText(text);
  if (reading.kind === 'read') return reading;
  return { kind: 'refused', why: `The ${what} cannot be read. ${reading.why}` };
}

/** A library over a store. Exported for tests, which bring stores that fail. */
export function libraryOn(
  store: Store,
  {
    storedIn,
    note,
    now,
    persist,
  }: Pick<Library, 'storedIn' | 'note'> & LibraryOptions & { readonly now: () => number },
): Library {
  let lastError: ErrorMessage;
  let hasAskedToPersist = false;

  /**
   * Asked with the first course that is saved, because some browsers ask the person: then there is something to lose.
   */
  function askToPersist(): void {
    if (hasAskedToPersist) return;
    hasAskedToPersist = true;
    persist?.().catch(() => undefined);
  }

  /** The result of the work, or the fallback with the failure recorded. */
  async function attempt<T>(work: () => Promise<T>, otherwise: (why: string) => T): Promise<T> {
    try {
      const result = await work();
      lastError = undefined;
      return result;
    } catch (failure) {
      lastError = failureWords(failure);
      return otherwise(lastError);
    }
  }

  const histories = keptHistories(store, now);
  const rejection = (why: string): CourseReading => ({ kind: 'refused', why });
  const newestFirst = async () => [...(await store.records())].sort((a, b) => b.saved - a.saved);
  const versions = async (slot: string) => [...(await store.versions(slot))].reverse();

  /** The newest state of a record that can be read, and why newer ones could not. */
  async function newestReadable(record: SavedRecord): Promise<{ readonly course?: Course; readonly why?: string }> {
    const last = await readRecord(record, `course "${record.title}"`);
    if (last.kind === 'read') return { course: last.course };
    for (const version of await versions(record.slot)) {
      const reading = await readRecord(version, 'earlier state');
      if (reading.kind === 'read') return { course: reading.course, why: `${last.why} An earlier state is shown.` };
    }
    return { why: last.why };
  }

  return {
    storedIn,
    note,
    lastError: () => lastError,
    async latest() {
      const whys: string[] = [];
      const course = await attempt<Course | undefined>(
        async () => {
          for (const record of await newestFirst()) {
            const { course, why } = await newestReadable(record);
            if (why !== undefined) whys.push(why);
            if (course !== undefined) return course;
          }
          return undefined;
        },
        () => undefined,
      );
      if (whys.length > 0) lastError = whys.join(' ');
      return course;
    },
    save: (history, slot = CURRENT_SLOT) =>
      attempt<ErrorMessage>(
        async () => {
          const text = writeCourse(presentCourse(history));
          const again = await readCourseText(text);
          if (again.kind === 'refused')
            return `The course was not saved, as it could not be opened again. ${again.why}`;
          await histories.save(history, text, slot);
          askToPersist();
          return undefined;
        },
        (why) => why,
      ),
    courses: () =>
      attempt<readonly SavedCourse[]>(
        async () => (await newestFirst()).map(({ slot, title, saved }) => ({ slot, title, saved })),
        () => [],
      ),
    load: (slot) =>
      attempt(async () => {
        const record = await store.record(slot);
        const reading = await readRecord(record, slotWords(slot));
        const number = record?.present;
        histories.opened(
          slot,
          reading.kind === 'read' && number !== undefined ? { course: reading.course, number } : undefined,
        );
        return reading;
      }, rejection),
    read: (slot) => attempt(async () => readRecord(await store.record(slot), slotWords(slot)), rejection),
    recall: (slot, pause = async () => undefined) =>
      attempt<RecalledSteps | undefined>(
        () => histories.recall(slot, pause),
        () => undefined,
      ),
    backup(history, slot) {
      return writeBackup({ slot, text: writeCourse(presentCourse(history)), ...histories.change(history, slot) });
    },
    async restore(text) {
      const backup = readBackup(text);
      const reading = backup === undefined ? undefined : await readCourseText(backup.text);
      if (backup === undefined || reading?.kind !== 'read') return undefined;
      const { course } = reading;
      const isSaved = await attempt(
        () => histories.restore(backup, course),
        () => false,
      );
      return { slot: backup.slot, course, isSaved };
    },
    remove: (slot) =>
      attempt<ErrorMessage>(
        async () => {
          histories.opened(slot, undefined);
          await store.remove(slot);
          return undefined;
        },
        (why) => why,
      ),
    earlier: (slot) =>
      attempt<readonly EarlierCourse[]>(
        async () => (await versions(slot)).map(({ number, saved }) => ({ number, saved })),
        () => [],
      ),
    loadEarlier: (slot, number) =>
      attempt(async () => {
        const found = (await store.versions(slot)).find((version) => version.number === number);
        return readRecord(found, `state ${number} of "${slot}"`);
      }, rejection),
  };
}
