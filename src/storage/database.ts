import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { MOST_VERSIONS, nextVersion, type SavedRecord, type SavedVersion, type Store } from './store.ts';

interface Shape extends DBSchema {
  courses: { key: string; value: SavedRecord };
  versions: { key: [string, number]; value: SavedVersion };
}

const NAME = 'polewright';
const VERSION = 1;

/** All keys of a slot's versions: a number comes before any text. */
function versionsOf(slot: string): IDBKeyRange {
  return IDBKeyRange.bound([slot, 0], [slot, Number.MAX_SAFE_INTEGER]);
}

async function put(db: IDBPDatabase<Shape>, record: SavedRecord): Promise<void> {
  const change = db.transaction(['courses', 'versions'], 'readwrite');
  const versions = change.objectStore('versions');
  const work = async () => {
    await change.objectStore('courses').put(record);
    const cursor = await versions.openCursor(versionsOf(record.slot), 'prev');
    const version = nextVersion(record, cursor?.value);
    await versions.put(version, [record.slot, version.number]);
    const oldest = version.number - MOST_VERSIONS;
    if (oldest > 0) await versions.delete(IDBKeyRange.bound([record.slot, 0], [record.slot, oldest]));
  };
  // When the work fails the transaction fails too; both are awaited so that no rejection is unhandled.
  await Promise.all([work(), change.done]);
}

/** Opens the browser's database. Rejects when the browser refuses, or another tab holds an older one open. */
export async function databaseStore(): Promise<Store> {
  const db = await new Promise<IDBPDatabase<Shape>>((resolve, reject) => {
    const opening = openDB<Shape>(NAME, VERSION, {
      upgrade(fresh) {
        fresh.createObjectStore('courses', { keyPath: 'slot' });
        fresh.createObjectStore('versions');
      },
      blocked: () => reject(new DOMException('another tab holds an older store open', 'InvalidStateError')),
      // A newer program in another tab waits until this one closes the database.
      blocking: () => void opening.then((held) => held.close()),
    });
    opening.then(resolve, reject);
  });
  return {
    put: (record) => put(db, record),
    records: () => db.getAll('courses'),
    record: (slot) => db.get('courses', slot),
    versions: (slot) => db.getAll('versions', versionsOf(slot)),
    async remove(slot) {
      const change = db.transaction(['courses', 'versions'], 'readwrite');
      await Promise.all([
        change.objectStore('courses').delete(slot),
        change.objectStore('versions').delete(versionsOf(slot)),
        change.done,
      ]);
    },
    dropVersions: () => db.clear('versions'),
  };
}
