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

export interface AutosaveOptions<Work> {
  /** Writes the work; returns the error, if any. */
  save(work: Work): Promise<ErrorMessage>;
  /** Called after each write with the error, or nothing when all is saved. */
  report?(error: ErrorMessage): void;
  readonly timer?: Timer;
  readonly delay?: number;
}

export interface Autosave<Work> {
  /** Call with the open work after every change. */
  schedule(work: Work): void;
  /** Takes the place of the last work without a write when that is saved; otherwise it is scheduled in its place. */
  replace(work: Work): void;
  /** Writes at once what is not written yet; resolves when the last work is saved or could not be. */
  flush(): Promise<void>;
  /** Whether everything that was reported is saved. */
  isSaved(): boolean;
  /** No more writes after the one under way. */
  stop(): void;
}

/**
 * Writes the work (a course with its history) at the latest `delay` after a change, one write at a time, always the last
 * state of it. What could not be written is tried again with the next change or flush.
 */
export function autosave<Work extends object>({
  save,
  report,
  timer = pageTimer,
  delay = DELAY,
}: AutosaveOptions<Work>): Autosave<Work> {
  let pending: Work | undefined;
  let last: Work | undefined;
  let writing: Promise<void> | undefined;
  let cancelTimer: (() => void) | undefined;
  let isStopped = false;

  async function writeOnce(work: Work): Promise<boolean> {
    const error = await save(work).catch((failure: unknown): ErrorMessage => `The course was not saved: ${failure}.`);
    if (error !== undefined) pending ??= work;
    report?.(error);
    return error === undefined;
  }

  async function write(): Promise<void> {
    cancelTimer?.();
    cancelTimer = undefined;
    // A caller during a write waits for it, and then for what came since.
    while (writing !== undefined) await writing;
    if (pending === undefined || isStopped) return;
    const work = pending;
    pending = undefined;
    let good = false;
    writing = writeOnce(work).then((kept) => {
      good = kept;
      writing = undefined;
    });
    await writing;
    if (good && pending !== undefined && cancelTimer === undefined) await write();
  }

  function schedule(work: Work): void {
    if (isStopped || work === last) return;
    last = work;
    pending = work;
    cancelTimer ??= timer.after(delay, () => {
      cancelTimer = undefined;
      void write();
    });
  }

  return {
    schedule,
    replace(work) {
      if (pending === undefined) last = work;
      else schedule(work);
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
