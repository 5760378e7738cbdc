import { type IDBPDatabase, openDB } from 'idb';
import type { ShelfItem } from '../core/course/shelf-item.ts';
import { readShelfItem, writeShelfItem } from '../core/files/shelf.ts';
import { type ErrorMessage, failureWords } from './failure.ts';

/** A kept obstacle that cannot be read any more, and why. */
interface Unreadable {
  readonly id: string;
  readonly why: string;
}

/** The designer's own obstacles, kept in this browser, by id. Nothing here rejects. */
export interface Shelf {
  /** `memory`: only as long as the page is open; `note` says why. */
  readonly storedIn: 'browser' | 'memory';
  readonly note: ErrorMessage;
  /** Keeps an obstacle; one that is kept under its id already is replaced. */
  save(item: ShelfItem): Promise<ErrorMessage>;
  /** By title. An entry that cannot be read is reported and stays where it is. */
  items(): Promise<{
    readonly items: readonly ShelfItem[];
    readonly unreadable: readonly Unreadable[];
    readonly error: ErrorMessage;
  }>;
  remove(id: string): Promise<ErrorMessage>;
}

/** Texts by id. Methods reject on failure. */
export interface ShelfStore {
  put(id: string, text: string): Promise<unknown>;
  texts(): Promise<readonly (readonly [string, unknown])[]>;
  remove(id: string): Promise<unknown>;
}

/** A database of its own, so that neither waits for the upgrade of the other. */
const NAME = 'polewright-shelf';
const OBSTACLES = 'obstacles';

async function databaseShelfStore(): Promise<ShelfStore> {
  const db = await new Promise<IDBPDatabase>((resolve, reject) => {
    const opening = openDB(NAME, 1, {
      upgrade: (fresh) => void fresh.createObjectStore(OBSTACLES),
      blocked: () => reject(new DOMException('another tab holds an older store open', 'InvalidStateError')),
      blocking: () => void opening.then((held) => held.close()),
    });
    opening.then(resolve, reject);
  });
  return {
    put: (id, text) => db.put(OBSTACLES, text, id),
    async texts() {
      const reading = db.transaction(OBSTACLES).store;
      const [ids, texts] = await Promise.all([reading.getAllKeys(), reading.getAll()]);
      return ids.map((id, i) => [String(id), texts[i]] as const);
    },
    remove: (id) => db.delete(OBSTACLES, id),
  };
}

function memoryShelfStore(): ShelfStore {
  const texts = new Map<string, string>();
  return {
    put: async (id, text) => texts.set(id, text),
    texts: async () => [...texts],
    remove: async (id) => texts.delete(id),
  };
}

/** Opens the browser's shelf; one in memory, with the reason, where the browser has or allows none. */
export async function openShelf(): Promise<Shelf> {
  if (typeof indexedDB === 'undefined') {
    const note = 'This browser keeps nothing between visits: own obstacles last as long as this page.';
    return shelfOn(memoryShelfStore(), { storedIn: 'memory', note });
  }
  try {
    return shelfOn(await databaseShelfStore(), { storedIn: 'browser', note: undefined });
  } catch (failure) {
    const note = `${failureWords(failure)} Until then own obstacles last as long as this page.`;
    return shelfOn(memoryShelfStore(), { storedIn: 'memory', note });
  }
}

async function failureOf(work: Promise<unknown>): Promise<ErrorMessage> {
  try {
    await work;
    return undefined;
  } catch (failure) {
    return failureWords(failure);
  }
}

/** A shelf over a store. Exported for tests, which bring stores that fail. */
export function shelfOn(store: ShelfStore, { storedIn, note }: Pick<Shelf, 'storedIn' | 'note'>): Shelf {
  return {
    storedIn,
    note,
    async save(item) {
      const text = writeShelfItem(item);
      const again = readShelfItem(text);
      if (again.kind === 'refused') return `The obstacle was not saved, as it could not be read again. ${again.why}`;
      return failureOf(store.put(item.id, text));
    },
    async items() {
      try {
        const items: ShelfItem[] = [];
        const unreadable: Unreadable[] = [];
        for (const [id, text] of await store.texts()) {
          const reading = readShelfItem(typeof text === 'string' ? text : '');
          if (reading.kind === 'read') items.push(reading.item);
          else unreadable.push({ id, why: reading.why });
        }
        return { items: items.sort((a, b) => a.title.localeCompare(b.title)), unreadable, error: undefined };
      } catch (failure) {
        return { items: [], unreadable: [], error: failureWords(failure) };
      }
    },
    remove: (id) => failureOf(store.remove(id)),
  };
}
