import type { Course } from '../core/course/course.ts';
import type { Trouble } from './failure.ts';

/** A clock that calls back once, later. The browser's is `pageTimer`. */
export interface Timer {
  /** Returns how to call it off. */
  after(milliseconds: number, call: () => void): () => void;
}

const pageTimer: Timer = {
  after(milliseconds, call) {
    const handle = setTimeout(call, milliseconds);
    return () => clearTimeout(handle);
  },
};

/** How much work may be lost when the power goes, milliseconds. */
const DELAY = 800;

export interface AutosaveOptions {
  /** Writes the course; answers what went wrong. */
  keep(course: Course): Promise<Trouble>;
  /** Told after each write: the trouble, or nothing when all is kept. */
  tell?(trouble: Trouble): void;
  readonly timer?: Timer;
  readonly delay?: number;
}

export interface Autosave {
  /** Call with the course on the table after every change. */
  changed(course: Course): void;
  /** Writes at once what is not yet written; resolved when the last course is kept or could not be. */
  flush(): Promise<void>;
  /** Whether everything that was told is kept. */
  isKept(): boolean;
  /** No more writes after the one under way. */
  stop(): void;
}

/**
 * Writes the course at the latest `delay` after a change, one write at a time, always the last course. What could not
 * be written is tried again with the next change or flush.
 */
export function autosave({ keep, tell, timer = pageTimer, delay = DELAY }: AutosaveOptions): Autosave {
  let waiting: Course | undefined;
  let last: Course | undefined;
  let writing: Promise<void> | undefined;
  let callOff: (() => void) | undefined;
  let stopped = false;

  async function writeOnce(course: Course): Promise<boolean> {
    const trouble = await keep(course).catch((failure: unknown): Trouble => `The course was not kept: ${failure}.`);
    if (trouble !== undefined) waiting ??= course;
    tell?.(trouble);
    return trouble === undefined;
  }

  async function write(): Promise<void> {
    callOff?.();
    callOff = undefined;
    // Whoever asks while a write is under way waits for it, and then for what came since.
    while (writing !== undefined) await writing;
    if (waiting === undefined || stopped) return;
    const course = waiting;
    waiting = undefined;
    let good = false;
    writing = writeOnce(course).then((kept) => {
      good = kept;
      writing = undefined;
    });
    await writing;
    if (good && waiting !== undefined && callOff === undefined) await write();
  }

  return {
    changed(course) {
      if (stopped || course === last) return;
      last = course;
      waiting = course;
      callOff ??= timer.after(delay, () => {
        callOff = undefined;
        void write();
      });
    },
    flush: write,
    isKept: () => waiting === undefined && writing === undefined,
    stop() {
      stopped = true;
      callOff?.();
      callOff = undefined;
    },
  };
}
