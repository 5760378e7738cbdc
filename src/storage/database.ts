import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import {
  MOST_VERSIONS,
  nextVersion,
  type SavedRecord,
  type SavedStep,
  type SavedVersion,
  type StepChange,
  type Store,
} from './store.ts';

interface Shape extends DBSchema {
  courses: { key: string; value: SavedRecord };
  versions: { key: [string, number]; value: SavedVersion };
  steps: { key: [string, number]; value: SavedStep };
}

const NAME = 'polewright';
/** 1 had no steps. */
const VERSION = 2;

/** All keys of a slot's numbered records: a number comes before any text. */
function numbersOf(slot: string): IDBKeyRange {
  return IDBKeyRange.bound([slot, 0], [slot, Number.MAX_SAFE_INTEGER]);
}

async function put(db: IDBPDatabase<Shape>, record: SavedRecord, change?: StepChange): Promise<void> {
  const { slot } = record;
  const transaction = db.transaction(['courses', 'versions', 'steps'], 'readwrite');
  const versions = transaction.objectStore('versions');
  const steps = transaction.objectStore('steps');
  const work = async () => {
    await transaction.objectStore('courses').put(record);
    const cursor = await versions.openCursor(numbersOf(slot), 'prev');
    const version = nextVersion(record, cursor?.value);
    await versions.put(version, [slot, version.number]);
    const oldest = version.number - MOST_VERSIONS;
    if (oldest > 0) await versions.delete(IDBKeyRange.bound([slot, 0], [slot, oldest]));
    if (change === undefined) return;
    const { put: fresh, first, last } = change;
    if (first > 0) await steps.delete(IDBKeyRange.bound([slot, 0], [slot, first - 1]));
    if (last < Number.MAX_SAFE_INTEGER) {
      await steps.delete(IDBKeyRange.bound([slot, last + 1], [slot, Number.MAX_SAFE_INTEGER]));
    }
    for (const step of fresh) await steps.put(step, [slot, step.number]);
  };
  // When the work fails the transaction fails too; both are awaited so that no rejection is unhandled.
  await Promise.all([work(), transaction.done]);
}

/** Opens the browser's database. Rejects when the browser refuses, or another tab holds an older one open. */
export async function databaseStore(): Promise<Store> {
  const db = await new Promise<IDBPDatabase<Shape>>((resolve, reject) => {
    const opening = openDB<Shape>(NAME, VERSION, {
      upgrade(database, from) {
        if (from < 1) {
          database.createObjectStore('courses', { keyPath: 'slot' });
          database.createObjectStore('versions');
        }
        if (from < 2) database.createObjectStore('steps');
      },
      blocked: () => reject(new DOMException('another tab holds an older store open', 'InvalidStateError')),
      // A newer program in another tab waits until this one closes the database.
      blocking: () => void opening.then((held) => held.close()),
    });
    opening.then(resolve, reject);
  });
  return {
    put: (record, change) => put(db, record, change),
    records: () => db.getAll('courses'),
    record: (slot) => db.get('courses', slot),
    versions: (slot) => db.getAll('versions', numbersOf(slot)),
    steps: (slot) => db.getAll('steps', numbersOf(slot)),
    async remove(slot) {
      const change = db.transaction(['courses', 'versions', 'steps'], 'readwrite');
      await Promise.all([
        change.objectStore('courses').delete(slot),
        change.objectStore('versions').delete(numbersOf(slot)),
        change.objectStore('steps').delete(numbersOf(slot)),
        change.done,
      ]);
    },
    dropVersions: () => db.clear('versions'),
    dropSteps: () => db.clear('steps'),
  };
}
