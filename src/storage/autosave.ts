import type { Course } from '../core/course/course.ts';
import type { ErrorMessage } from './failure.ts';

/** A clock that calls back once, later. The browser's is `pageTimer`. */
export interface Timer {
  /** Returns a function that cancels it. */
  after(milliseconds: number, call: () => void): () => void;
}

const pageTimer: Timer = {
  after(milliseconds, call) {
    const handle = setTimeout(call, milliseconds);
    return () => clearTimeout(handle);
  },
};

/** How much work may be lost when the power fails, milliseconds. */
const DELAY = 800;

export interface AutosaveOptions {
  /** Writes the course; returns the error, if any. */
  save(course: Course): Promise<ErrorMessage>;
  /** Called after each write with the error, or nothing when all is saved. */
  report?(error: ErrorMessage): void;
  readonly timer?: Timer;
  readonly delay?: number;
}

export interface Autosave {
  /** Call with the open course after every change. */
  schedule(course: Course): void;
  /** Writes at once what is not written yet; resolves when the last course is saved or could not be. */
  flush(): Promise<void>;
  /** Whether everything that was reported is saved. */
  isSaved(): boolean;
  /** No more writes after the one under way. */
  stop(): void;
}

/**
 * Writes the course at the latest `delay` after a change, one write at a time, always the last course. What could not
 * be written is tried again with the next change or flush.
 */
export function autosave({ save, report, timer = pageTimer, delay = DELAY }: AutosaveOptions): Autosave {
  let pending: Course | undefined;
  let last: Course | undefined;
  let writing: Promise<void> | undefined;
  let cancelTimer: (() => void) | undefined;
  let isStopped = false;

  async function writeOnce(course: Course): Promise<boolean> {
    const error = await save(course).catch((failure: unknown): ErrorMessage => `The course was not kept: ${failure}.`);
    if (error !== undefined) pending ??= course;
    report?.(error);
    return error === undefined;
  }

  async function write(): Promise<void> {
    cancelTimer?.();
    cancelTimer = undefined;
    // A caller during a write waits for it, and then for what came since.
    while (writing !== undefined) await writing;
    if (pending === undefined || isStopped) return;
    const course = pending;
    pending = undefined;
    let good = false;
    writing = writeOnce(course).then((kept) => {
      good = kept;
      writing = undefined;
    });
    await writing;
    if (good && pending !== undefined && cancelTimer === undefined) await write();
  }

  return {
    schedule(course) {
      if (isStopped || course === last) return;
      last = course;
      pending = course;
      cancelTimer ??= timer.after(delay, () => {
        cancelTimer = undefined;
        void write();
      });
    },
    flush: write,
    isSaved: () => pending === undefined && writing === undefined,
    stop() {
      isStopped = true;
      cancelTimer?.();
      cancelTimer = undefined;
    },
  };
}
