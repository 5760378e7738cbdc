import type { Course } from '../core/course/course.ts';
import { type History, presentCourse, type RecalledSteps } from '../core/course/history.ts';
import { failureName } from './failure.ts';
import { type Pause, recalledSteps } from './recall.ts';
import { type HistoryChange, type OpenedStep, type StepLog, stepLog } from './step-log.ts';
import type { SavedRecord, StepChange, Store } from './store.ts';
import type { Backup } from './unload-backup.ts';

/** The histories of the courses in a store, by slot. Methods reject when the store does. */
export interface KeptHistories {
  /** The stored course of the slot was opened, as this step; without one its history is not known. */
  opened(slot: string, step: OpenedStep | undefined): void;
  /** Writes the present course, whose text this is, and the steps that are not stored yet. */
  save(history: History, text: string, slot: string): Promise<void>;
  /** What `save` would write of the history. */
  change(history: History, slot: string): HistoryChange;
  /** The steps around the course that was opened last; undefined when none is known. */
  recall(slot: string, pause: Pause): Promise<RecalledSteps | undefined>;
  /** Writes a backup whose course this is; false when it has no steps. */
  restore(backup: Backup, course: Course): Promise<boolean>;
}

/** Writes a course and its steps. Where there is no room the steps go first, then the earlier states. */
async function putWithin(store: Store, record: SavedRecord, steps: StepChange): Promise<'whole' | 'without-steps'> {
  let failure: unknown;
  try {
    await store.put(record, steps);
    return 'whole';
  } catch (first) {
    failure = first;
  }
  for (const makeRoom of [store.dropSteps, store.dropVersions]) {
    if (failureName(failure) !== 'QuotaExceededError') break;
    await makeRoom();
    try {
      await store.put(record);
      return 'without-steps';
    } catch (again) {
      failure = again;
    }
  }
  throw failure;
}

/** `now`: milliseconds since 1970. */
export function keptHistories(store: Store, now: () => number): KeptHistories {
  const logs = new Map<string, StepLog>();
  const openedSteps = new Map<string, OpenedStep>();

  function logOf(slot: string): StepLog {
    const log = logs.get(slot) ?? stepLog(slot, openedSteps.get(slot));
    logs.set(slot, log);
    return log;
  }
  function opened(slot: string, step: OpenedStep | undefined): void {
    logs.delete(slot);
    if (step === undefined) openedSteps.delete(slot);
    else openedSteps.set(slot, step);
  }

  return {
    opened,
    change: (history, slot) => logOf(slot).changeOf(history),
    async save(history, text, slot) {
      const log = logOf(slot);
      const change = log.changeOf(history);
      const record = { slot, title: presentCourse(history).title, saved: now(), text, present: change.present };
      const written = await putWithin(store, record, change.change);
      if (written === 'whole') log.wrote(history, change);
      else log.dropped(history);
    },
    async recall(slot, pause) {
      const step = openedSteps.get(slot);
      if (step === undefined) return undefined;
      const log = logOf(slot);
      const stored = await store.steps(slot);
      if (!stored.some(({ number }) => number === step.number)) log.missed();
      const recalled = await recalledSteps(stored, step, pause);
      log.recalled(recalled, step.number - recalled.before.length);
      return recalled;
    },
    async restore({ slot, text, present, change }, course) {
      if (present === undefined || change === undefined) return false;
      const written = await putWithin(store, { slot, title: course.title, saved: now(), text, present }, change);
      opened(slot, { course, number: present });
      if (written === 'without-steps') logOf(slot).missed();
      return true;
    },
  };
}
