import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import type { ShelfItem } from '../../src/core/course/shelf-item.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { ORIGIN } from '../../src/core/plane/pose.ts';
import { openShelf, type ShelfStore, shelfOn } from '../../src/storage/shelf.ts';

function item(id: string, title: string, kind = 'fan'): ShelfItem {
  const obstacle = buildObstacle(`${kind}-1`, kind, {}, ORIGIN);
  if ('why' in obstacle) throw new Error(obstacle.why);
  return { id, title, obstacle };
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe('a shelf in the browser', () => {
  test('gives back what was kept, by title, also when it is opened again', async () => {
    const shelf = await openShelf();
    expect(shelf.storedIn).toBe('browser');
    expect(await shelf.save(item('b', 'Narrow fan'))).toBeUndefined();
    expect(await shelf.save(item('a', 'Corner box', 'box'))).toBeUndefined();
    const { items, unreadable, error } = await (await openShelf()).items();
    expect(items).toEqual([item('a', 'Corner box', 'box'), item('b', 'Narrow fan')]);
    expect([unreadable, error]).toEqual([[], undefined]);
  });

  test('replaces what has the same id, and forgets', async () => {
    const shelf = await openShelf();
    await shelf.save(item('a', 'First'));
    await shelf.save(item('a', 'Second'));
    expect((await shelf.items()).items.map(({ title }) => title)).toEqual(['Second']);
    expect(await shelf.remove('a')).toBeUndefined();
    expect((await shelf.items()).items).toEqual([]);
  });

  test('tells what it cannot read and gives the rest', async () => {
    const shelf = await openShelf();
    await shelf.save(item('a', 'Fan'));
    const db = await openDB('polewright-shelf', 1);
    await db.put('obstacles', '{"format": "polewright-obstacle", "version": 7}', 'b');
    db.close();
    const { items, unreadable } = await shelf.items();
    expect(items).toHaveLength(1);
    expect(unreadable).toEqual([{ id: 'b', why: 'The version of the obstacle is 7; this program reads version 1.' }]);
  });

  test('does not keep what could not be read again', async () => {
    const shelf = await openShelf();
    expect(await shelf.save({ ...item('a', 'Fan'), title: '' })).toContain('The obstacle was not saved');
    expect((await shelf.items()).items).toEqual([]);
  });
});

describe('a shelf whose store fails', () => {
  const fails = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
  const store: ShelfStore = { put: fails, texts: fails, remove: fails };
  const shelf = shelfOn(store, { storedIn: 'browser', note: undefined });

  test('says so in words and never rejects', async () => {
    expect(await shelf.save(item('a', 'Fan'))).toContain('no room left');
    expect(await shelf.remove('a')).toContain('no room left');
    expect(await shelf.items()).toEqual({
      items: [],
      unreadable: [],
      error: expect.stringContaining('no room left'),
    });
  });
});

test('without a database the shelf lasts as long as the page, and says so', async () => {
  const kept = globalThis.indexedDB;
  Reflect.deleteProperty(globalThis, 'indexedDB');
  try {
    const shelf = await openShelf();
    expect(shelf.storedIn).toBe('memory');
    expect(shelf.note).toContain('as long as this page');
    await shelf.save(item('a', 'Fan'));
    expect((await shelf.items()).items).toHaveLength(1);
  } finally {
    globalThis.indexedDB = kept;
  }
});
