import { createStore } from 'zustand/vanilla';
import type { Course } from '../core/course/course.ts';
import { presentCourse } from '../core/course/history.ts';
import { type CourseReading, readCourse } from '../core/files/read.ts';
import { writeCourse } from '../core/files/write.ts';
import type { Desk } from '../desk/desk.ts';
import { type Autosave, autosave } from '../storage/autosave.ts';
import type { ErrorMessage } from '../storage/failure.ts';
import type { EarlierCourse, Library, SavedCourse } from '../storage/library.ts';
import { acquireLock, type LockResult } from '../storage/tab-lock.ts';

/** What the person should know about the keeping of the course. */
export interface SaveState {
  readonly isSaved: boolean;
  /** What went wrong and what to do. */
  readonly errorMessage: ErrorMessage;
  /** Set while another tab edits this course: nothing is kept from here. */
  readonly lockedElsewhere: ErrorMessage;
}

/** Keeps the course on the table, each course in a slot of its own. */
export interface CourseSaver {
  state(): SaveState;
  subscribe(listener: () => void): () => void;
  /** Where the course on the table is kept. */
  slot(): string;
  courses(): Promise<readonly SavedCourse[]>;
  /** Puts a new course on the table, in a slot of its own. */
  openNew(course: Course): void;
  /** Puts a kept course on the table. */
  load(slot: string): Promise<CourseReading>;
  /** Earlier states of the course on the table, the newest first. */
  earlier(): Promise<readonly EarlierCourse[]>;
  /** Reads one of them; what is on the table stays. */
  readEarlier(number: number): Promise<CourseReading>;
  /** Goes on in a slot of its own with what is on the table. */
  saveAsCopy(): void;
}

/** The course that was on the table last, and its slot; undefined at the first visit. */
export async function lastSaved(library: Library): Promise<{ slot: string; course: Course } | undefined> {
  const backup = takeBackup();
  if (backup !== undefined) return backup;
  const [newest] = await library.courses();
  if (newest === undefined) return undefined;
  const reading = await library.load(newest.slot);
  const course = reading.kind === 'read' ? reading.course : await library.latest();
  return course === undefined ? undefined : { slot: newest.slot, course };
}

export function freshSlot(): string {
  return `course-${crypto.randomUUID()}`;
}

/** Where the course that is on the table at first is kept; `isFresh`: it was not there before. */
export interface FirstSlot {
  readonly slot: string;
  readonly isFresh: boolean;
}

export function createCourseSaver(desk: Desk, library: Library, first: FirstSlot): CourseSaver {
  const store = createStore<SaveState>()(() => ({
    isSaved: true,
    errorMessage: library.note,
    lockedElsewhere: undefined,
  }));
  const { getState: saving, setState: change } = store;
  let slot = first.slot;
  /** Whether somebody has done something to the course, ever. What was only looked at leaves no trace when it goes. */
  let isEdited = !first.isFresh;
  let lock: LockResult = { kind: 'unsupported' };
  let slotAutosave = autosaveOf(slot);

  function autosaveOf(own: string): Autosave {
    return autosave({
      save: (course) => library.save(course, own),
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
    change({ lockedElsewhere: undefined, isSaved: true });
    void lockSlot();
  }
  function onDeskChange(): void {
    if (desk.state().gesture !== null || saving().lockedElsewhere !== undefined) return;
    const { history } = desk.state();
    isEdited ||= history.steps.length > 1;
    slotAutosave.schedule(presentCourse(history));
    if (saving().isSaved !== slotAutosave.isSaved()) change({ isSaved: slotAutosave.isSaved() });
  }

  desk.subscribe(onDeskChange);
  // What came out of the small store of a page that went is not yet in the library.
  onDeskChange();
  void lockSlot();
  document.addEventListener('visibilitychange', () => void slotAutosave.flush());
  // The browser does not wait for its database when a page goes; this small store it writes at once.
  window.addEventListener('pagehide', () => {
    if (!slotAutosave.isSaved() && saving().lockedElsewhere === undefined) {
      writeBackup({ slot, course: presentCourse(desk.state().history) });
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
    async load(wanted) {
      const reading = await library.load(wanted);
      if (reading.kind === 'read') {
        moveTo(wanted);
        isEdited = true;
        desk.open(reading.course);
      }
      return reading;
    },
    async earlier() {
      // What is on the table now is the newest state, so that the one before it can be told.
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

const UNLOAD_BACKUP = 'polewright-spare';

function writeBackup({ slot, course }: { slot: string; course: Course }): void {
  try {
    localStorage.setItem(UNLOAD_BACKUP, `${slot}\n${writeCourse(course)}`);
  } catch {
    // Full or forbidden: at most the last second of work is lost.
  }
}

function takeBackup(): { slot: string; course: Course } | undefined {
  try {
    const text = localStorage.getItem(UNLOAD_BACKUP);
    localStorage.removeItem(UNLOAD_BACKUP);
    const end = text?.indexOf('\n') ?? -1;
    if (text === null || end < 0) return undefined;
    const reading = readCourse(text.slice(end + 1));
    return reading.kind === 'read' ? { slot: text.slice(0, end), course: reading.course } : undefined;
  } catch {
    return undefined;
  }
}
