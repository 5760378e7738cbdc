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

/** What the person should know about saving. */
export interface SaveState {
  readonly isSaved: boolean;
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
  /** Opens a saved course. */
  load(slot: string): Promise<CourseReading>;
  /** Earlier states of the open course, the newest first. */
  earlier(): Promise<readonly EarlierCourse[]>;
  /** Reads one of them; the open course stays. */
  readEarlier(number: number): Promise<CourseReading>;
  /** Goes on with the open course in a slot of its own. */
  saveAsCopy(): void;
}

/** The course that was open last, and its slot; undefined at the first visit. */
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

/** The slot of the first open course; `isFresh`: it did not exist before. */
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
  /** Whether the course was ever changed. One that was only looked at is not saved. */
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
  // A backup from a page that was closed is not in the library yet.
  onDeskChange();
  void lockSlot();
  document.addEventListener('visibilitychange', () => void slotAutosave.flush());
  // A page that closes does not wait for the database; this small storage is written at once.
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
