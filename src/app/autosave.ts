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
export interface Keeping {
  readonly isKept: boolean;
  /** What went wrong and what to do. */
  readonly trouble: ErrorMessage;
  /** Set while another tab edits this course: nothing is kept from here. */
  readonly elsewhere: ErrorMessage;
}

/** Keeps the course on the table, each course in a slot of its own. */
export interface Keeper {
  state(): Keeping;
  listen(heard: () => void): () => void;
  /** Where the course on the table is kept. */
  slot(): string;
  courses(): Promise<readonly SavedCourse[]>;
  /** Puts a new course on the table, in a slot of its own. */
  begin(course: Course): void;
  /** Puts a kept course on the table. */
  load(slot: string): Promise<CourseReading>;
  /** Earlier states of the course on the table, the newest first. */
  earlier(): Promise<readonly EarlierCourse[]>;
  /** Reads one of them; what is on the table stays. */
  readEarlier(number: number): Promise<CourseReading>;
  /** Goes on in a slot of its own with what is on the table. */
  part(): void;
}

/** The course that was on the table last, and its slot; undefined at the first visit. */
export async function lastKept(library: Library): Promise<{ slot: string; course: Course } | undefined> {
  const spare = takenSpare();
  if (spare !== undefined) return spare;
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

export function createKeeper(desk: Desk, library: Library, first: FirstSlot): Keeper {
  const hearers = new Set<() => void>();
  let keeping: Keeping = { isKept: true, trouble: library.note, elsewhere: undefined };
  let slot = first.slot;
  /** Whether somebody has done something to the course, ever. What was only looked at leaves no trace when it goes. */
  let isWorkedOn = !first.isFresh;
  let claim: LockResult = { kind: 'unsupported' };
  let saver = saverOf(slot);

  function change(next: Partial<Keeping>): void {
    keeping = { ...keeping, ...next };
    for (const heard of hearers) heard();
  }
  function saverOf(own: string): Autosave {
    return autosave({
      save: (course) => library.save(course, own),
      report: (trouble) => change({ trouble: trouble ?? library.note, isKept: trouble === undefined }),
    });
  }
  async function claimSlot(): Promise<void> {
    const own = slot;
    const got = await acquireLock(own);
    if (own !== slot) {
      if (got.kind === 'acquired') got.release();
      return;
    }
    claim = got;
    if (got.kind === 'in-other-tab') saver.stop();
    change({ elsewhere: got.kind === 'in-other-tab' ? got.says : undefined });
  }
  function moveTo(next: string): void {
    const [old, leaves] = [slot, !isWorkedOn && keeping.elsewhere === undefined];
    void saver.flush().then(() => (leaves ? library.remove(old) : undefined));
    if (claim.kind === 'acquired') claim.release();
    slot = next;
    saver = saverOf(slot);
    change({ elsewhere: undefined, isKept: true });
    void claimSlot();
  }
  function told(): void {
    if (desk.state().gesture !== null || keeping.elsewhere !== undefined) return;
    const { history } = desk.state();
    isWorkedOn ||= history.steps.length > 1;
    saver.schedule(presentCourse(history));
    if (keeping.isKept !== saver.isSaved()) change({ isKept: saver.isSaved() });
  }

  desk.listen(told);
  // What came out of the small store of a page that went is not yet in the library.
  told();
  void claimSlot();
  document.addEventListener('visibilitychange', () => void saver.flush());
  // The browser does not wait for its database when a page goes; this small store it writes at once.
  window.addEventListener('pagehide', () => {
    if (!saver.isSaved() && keeping.elsewhere === undefined) {
      putSpare({ slot, course: presentCourse(desk.state().history) });
    }
  });

  return {
    state: () => keeping,
    listen(heard) {
      hearers.add(heard);
      return () => hearers.delete(heard);
    },
    slot: () => slot,
    courses: () => library.courses(),
    begin(course) {
      moveTo(freshSlot());
      isWorkedOn = false;
      desk.open(course);
    },
    async load(wanted) {
      const reading = await library.load(wanted);
      if (reading.kind === 'read') {
        moveTo(wanted);
        isWorkedOn = true;
        desk.open(reading.course);
      }
      return reading;
    },
    async earlier() {
      // What is on the table now is the newest state, so that the one before it can be told.
      await saver.flush();
      return library.earlier(slot);
    },
    readEarlier: (number) => library.loadEarlier(slot, number),
    part() {
      moveTo(freshSlot());
      isWorkedOn = true;
      told();
    },
  };
}

const SPARE = 'polewright-spare';

function putSpare({ slot, course }: { slot: string; course: Course }): void {
  try {
    localStorage.setItem(SPARE, `${slot}\n${writeCourse(course)}`);
  } catch {
    // Full or forbidden: at most the last second of work is lost.
  }
}

function takenSpare(): { slot: string; course: Course } | undefined {
  try {
    const text = localStorage.getItem(SPARE);
    localStorage.removeItem(SPARE);
    const end = text?.indexOf('\n') ?? -1;
    if (text === null || end < 0) return undefined;
    const reading = readCourse(text.slice(end + 1));
    return reading.kind === 'read' ? { slot: text.slice(0, end), course: reading.course } : undefined;
  } catch {
    return undefined;
  }
}
