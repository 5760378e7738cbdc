import { createStore } from 'zustand/vanilla';
import type { Course } from '../core/course/course.ts';
import { type History, newHistory, presentCourse, withRecalled } from '../core/course/history.ts';
import type { CourseReading } from '../core/files/read.ts';
import type { Desk } from '../desk/desk.ts';
import { type Autosave, autosave } from '../storage/autosave.ts';
import type { ErrorMessage } from '../storage/failure.ts';
import type { EarlierCourse, Library, SavedCourse } from '../storage/library.ts';
import { fetchReader } from '../storage/reader.ts';
import { acquireLock, type LockResult } from '../storage/tab-lock.ts';

/** What the person should know about saving. */
export interface SaveState {
  readonly isSaved: boolean;
  /** False while a course from a link is only looked at: it is in no slot yet. */
  readonly isKept: boolean;
  /** What went wrong and what to do. */
  readonly errorMessage: ErrorMessage;
  /** Set while another tab edits this course: this tab saves nothing. */
  readonly lockedElsewhere: ErrorMessage;
}

/** Saves the open course; every course has a slot of its own. */
export interface CourseSaver {
  state(): SaveState;
  subscribe(listener: () => void): () => void;
  /** The slot of the open course. */
  slot(): string;
  courses(): Promise<readonly SavedCourse[]>;
  /** Opens a new course, in a slot of its own. */
  openNew(course: Course): void;
  /** Opens a course that is kept only once it is changed, in a slot of its own. */
  lookAt(course: Course): void;
  /** Opens a saved course. */
  load(slot: string): Promise<CourseReading>;
  /** Reads a saved course; the open one stays. */
  read(slot: string): Promise<CourseReading>;
  /** Earlier states of the open course, the newest first. */
  earlier(): Promise<readonly EarlierCourse[]>;
  /** Reads one of them; the open course stays. */
  readEarlier(number: number): Promise<CourseReading>;
  /** Goes on with the open course in a slot of its own. */
  saveAsCopy(): void;
}

/** The course that a page opens with. `isSaved`: the library has it as it is. */
export interface LastCourse {
  readonly slot: string;
  readonly course: Course;
  readonly isSaved: boolean;
}

/**
 * The course that was open last, and its slot; undefined at the first visit. Rejects where there is something to read and
 * what reads it cannot be fetched: then nothing is touched.
 */
export async function lastSaved(library: Library): Promise<LastCourse | undefined> {
  const kept = await library.courses();
  if (kept.length === 0 && !hasBackup()) return undefined;
  await fetchReader();
  const backup = takeBackup();
  const restored = backup === null ? undefined : await library.restore(backup);
  if (restored !== undefined) return restored;
  const [newest] = kept;
  if (newest === undefined) return undefined;
  const { slot } = newest;
  const reading = await library.load(slot);
  if (reading.kind === 'read') return { slot, course: reading.course, isSaved: true };
  const course = await library.latest();
  return course === undefined ? undefined : { slot, course, isSaved: false };
}

export function freshSlot(): string {
  return `course-${crypto.randomUUID()}`;
}

/** The slot of the first open course; `isFresh`: it did not exist before; `isSaved`: the library has the course. */
export interface FirstSlot {
  readonly slot: string;
  readonly isFresh: boolean;
  readonly isSaved: boolean;
}

export function createCourseSaver(desk: Desk, library: Library, first: FirstSlot): CourseSaver {
  const store = createStore<SaveState>()(() => ({
    isSaved: true,
    isKept: !(first.isFresh && first.isSaved),
    errorMessage: library.note,
    lockedElsewhere: undefined,
  }));
  const { getState: saving, setState: change } = store;
  let slot = first.slot;
  /** Whether the course was ever changed. One that was only looked at is not saved. */
  let isEdited = !first.isFresh;
  /** While a course is opened that nobody has changed yet. */
  let isLookedAt = false;
  let lock: LockResult = { kind: 'unsupported' };
  let slotAutosave = autosaveOf(slot);

  function autosaveOf(own: string): Autosave<History> {
    return autosave<History>({
      save: (history) => library.save(history, own),
      report: (trouble) => change({ errorMessage: trouble ?? library.note, isSaved: trouble === undefined }),
    });
  }
  async function lockSlot(): Promise<void> {
    const own = slot;
    const got = await acquireLock(own);
    if (own !== slot) {
      if (got.kind === 'acquired') got.release();
      return;
    }
    lock = got;
    if (got.kind === 'in-other-tab') slotAutosave.stop();
    change({ lockedElsewhere: got.kind === 'in-other-tab' ? got.says : undefined });
  }
  function moveTo(next: string): void {
    const [old, leaves] = [slot, !isEdited && saving().lockedElsewhere === undefined];
    void slotAutosave.flush().then(() => (leaves ? library.remove(old) : undefined));
    if (lock.kind === 'acquired') lock.release();
    slot = next;
    slotAutosave = autosaveOf(slot);
    change({ lockedElsewhere: undefined, isSaved: true, isKept: true });
    void lockSlot();
  }
  /** Reads the steps around the open course when the page has time; what is done meanwhile stays. */
  async function recallSteps(): Promise<void> {
    const own = slot;
    const recalled = await library.recall(own, idleTime);
    const { history } = desk.state();
    if (recalled === undefined || own !== slot) return;
    const longer = withRecalled(history, recalled);
    slotAutosave.replace(longer);
    desk.lengthen(longer);
  }
  function onDeskChange(): void {
    if (isLookedAt || desk.state().gesture !== null || saving().lockedElsewhere !== undefined) return;
    const { history } = desk.state();
    isEdited ||= history.steps.length > 1;
    if (isEdited && !saving().isKept) change({ isKept: true });
    slotAutosave.schedule(history);
    if (saving().isSaved !== slotAutosave.isSaved()) change({ isSaved: slotAutosave.isSaved() });
  }

  desk.subscribe(onDeskChange);
  if (first.isSaved) slotAutosave.replace(desk.state().history);
  else onDeskChange();
  void recallSteps();
  void lockSlot();
  document.addEventListener('visibilitychange', () => void slotAutosave.flush());
  // A page that closes does not wait for the database; this small storage is written at once.
  window.addEventListener('pagehide', () => {
    if (!slotAutosave.isSaved() && saving().lockedElsewhere === undefined) {
      keepBackup(library, desk.state().history, slot);
    }
  });

  return {
    state: saving,
    subscribe: (listener) => store.subscribe(() => listener()),
    slot: () => slot,
    courses: () => library.courses(),
    openNew(course) {
      moveTo(freshSlot());
      isEdited = false;
      desk.open(course);
    },
    lookAt(course) {
      moveTo(freshSlot());
      isEdited = false;
      isLookedAt = true;
      desk.open(course);
      isLookedAt = false;
      slotAutosave.replace(desk.state().history);
      change({ isKept: false });
    },
    async load(wanted) {
      const reading = await library.load(wanted);
      if (reading.kind === 'read') {
        moveTo(wanted);
        isEdited = true;
        desk.open(reading.course);
        void recallSteps();
      }
      return reading;
    },
    read: (wanted) => library.read(wanted),
    async earlier() {
      // The present state is saved as the newest, so that the one before stays separate.
      await slotAutosave.flush();
      return library.earlier(slot);
    },
    readEarlier: (number) => library.loadEarlier(slot, number),
    saveAsCopy() {
      moveTo(freshSlot());
      isEdited = true;
      onDeskChange();
    },
  };
}

/** When the page has nothing more urgent to do. */
function idleTime(): Promise<void> {
  return new Promise((resolve) => {
    if (typeof requestIdleCallback === 'function') requestIdleCallback(() => resolve(), { timeout: 250 });
    else setTimeout(resolve, 20);
  });
}

const UNLOAD_BACKUP = 'polewright-spare';

function keepBackup(library: Library, history: History, slot: string): void {
  // Without its steps where they do not fit; where nothing does, at most the last second of work is lost.
  for (const kept of [history, newHistory(presentCourse(history))]) {
    try {
      localStorage.setItem(UNLOAD_BACKUP, library.backup(kept, slot));
      return;
    } catch {
      // Full or forbidden.
    }
  }
}

function hasBackup(): boolean {
  try {
    return localStorage.getItem(UNLOAD_BACKUP) !== null;
  } catch {
    return false;
  }
}

function takeBackup(): string | null {
  try {
    const text = localStorage.getItem(UNLOAD_BACKUP);
    localStorage.removeItem(UNLOAD_BACKUP);
    return text;
  } catch {
    return null;
  }
}
