import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import type { Course } from '../../src/core/course/course.ts';
import { newHistory } from '../../src/core/course/history.ts';
import { CURRENT_SLOT, libraryOn, openLibrary } from '../../src/storage/library.ts';
import { MOST_VERSIONS, memoryStore, type Store, VERSION_SPAN } from '../../src/storage/store.ts';

const course = (title: string): Course => blankCourse({ title });

/** A clock that is set by hand. */
let time = 0;
const now = () => time;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  time = 1_000_000;
});

afterEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

describe.each(['browser', 'memory'] as const)('a library in the %s', (keeps) => {
  const open = async () => {
    if (keeps === 'browser') return openLibrary({ now });
    return libraryOn(memoryStore(), { storedIn: keeps, note: undefined, now });
  };

  test('is empty at first', async () => {
    const library = await open();
    expect(library.storedIn).toBe(keeps);
    expect(await library.latest()).toBeUndefined();
    expect(await library.courses()).toEqual([]);
    expect(library.lastError()).toBeUndefined();
  });

  test('gives back the course that was kept last', async () => {
    const library = await open();
    expect(await library.save(newHistory(course('Morning')))).toBeUndefined();
    time += 1;
    expect(await library.save(newHistory(course('Noon')), 'second')).toBeUndefined();
    expect(await library.latest()).toEqual(course('Noon'));
    time += 1;
    await library.save(newHistory(course('Evening')));
    expect(await library.latest()).toEqual(course('Evening'));
    expect(await library.courses()).toEqual([
      { slot: CURRENT_SLOT, title: 'Evening', saved: time },
      { slot: 'second', title: 'Noon', saved: time - 1 },
    ]);
    expect(await library.load('second')).toEqual({ kind: 'read', course: course('Noon'), repairs: [] });
  });

  test('forgets a course with its earlier states', async () => {
    const library = await open();
    await library.save(newHistory(course('Morning')));
    await library.save(newHistory(course('Noon')), 'second');
    expect(await library.remove(CURRENT_SLOT)).toBeUndefined();
    expect((await library.courses()).map(({ slot }) => slot)).toEqual(['second']);
    expect(await library.earlier(CURRENT_SLOT)).toEqual([]);
    expect(await library.earlier('second')).toHaveLength(1);
    expect(await library.load(CURRENT_SLOT)).toEqual({
      kind: 'refused',
      why: 'There is no course in the slot "table".',
    });
  });

  test('keeps the last twenty states, and saves close together share one', async () => {
    const library = await open();
    await library.save(newHistory(course('First')));
    time += VERSION_SPAN - 1;
    await library.save(newHistory(course('Soon after')));
    expect(await library.earlier(CURRENT_SLOT)).toEqual([{ number: 1, saved: time }]);
    for (let i = 2; i <= MOST_VERSIONS + 3; i += 1) {
      time += VERSION_SPAN;
      await library.save(newHistory(course(`State ${i}`)));
    }
    const states = await library.earlier(CURRENT_SLOT);
    expect(states.map(({ number }) => number)).toEqual(Array.from({ length: MOST_VERSIONS }, (_, i) => 23 - i));
    expect(await library.loadEarlier(CURRENT_SLOT, 4)).toMatchObject({ kind: 'read', course: { title: 'State 4' } });
    expect(await library.loadEarlier(CURRENT_SLOT, 3)).toEqual({
      kind: 'refused',
      why: 'There is no state 3 of "table".',
    });
  });
});

test('a library in the browser is there again when it is opened again', async () => {
  await (await openLibrary({ now })).save(newHistory(course('Morning')));
  expect(await (await openLibrary({ now })).latest()).toEqual(course('Morning'));
});

describe('the browser is asked to spare what is kept', () => {
  test('once, with the first course', async () => {
    let asked = 0;
    const persist = async () => {
      asked += 1;
    };
    const library = await openLibrary({ now, persist });
    await library.latest();
    expect(asked).toBe(0);
    await library.save(newHistory({ ...course('Morning'), horse: 'unicorn' }));
    expect(asked).toBe(0);
    await library.save(newHistory(course('Morning')));
    await library.save(newHistory(course('Noon')), 'second');
    expect(asked).toBe(1);
  });

  test('and keeps all the same when it refuses', async () => {
    const refusing = () => Promise.reject(new DOMException('no', 'NotAllowedError'));
    const library = await openLibrary({ now, persist: refusing });
    expect(await library.save(newHistory(course('Morning')))).toBeUndefined();
    expect(library.lastError()).toBeUndefined();
    expect(await library.latest()).toEqual(course('Morning'));
  });
});

describe('a kept record that is damaged', () => {
  async function damaged(text: unknown, what: 'course' | 'all'): Promise<void> {
    const db = await openDB('polewright', 2);
    const record = await db.get('courses', CURRENT_SLOT);
    await db.put('courses', { ...record, text });
    if (what === 'all') await db.clear('versions');
    db.close();
  }

  test('gives way to its earlier state, and says so', async () => {
    const library = await openLibrary({ now });
    await library.save(newHistory(course('Morning')));
    await damaged('{"format": "polewright-course"', 'course');
    expect(await library.latest()).toEqual(course('Morning'));
    expect(library.lastError()).toBe(
      'The course "Morning" cannot be read. The file is cut off: it ends at line 1, column 31, ' +
        'where a comma or } would be right. Take a complete copy of it. An earlier state is shown.',
    );
    expect(await library.load(CURRENT_SLOT)).toMatchObject({ kind: 'refused' });
  });

  test('with no earlier state gives way to another course, and says so', async () => {
    const library = await openLibrary({ now });
    await library.save(newHistory(course('Noon')), 'second');
    time += 1;
    await library.save(newHistory(course('Morning')));
    await damaged(17, 'all');
    expect(await library.latest()).toEqual(course('Noon'));
    expect(library.lastError()).toBe('The course "Morning" is damaged: it has no text.');
  });

  test('alone leaves nothing to show, and says so', async () => {
    const library = await openLibrary({ now });
    await library.save(newHistory(course('Morning')));
    await damaged('', 'all');
    expect(await library.latest()).toBeUndefined();
    expect(library.lastError()).toBe('The course "Morning" cannot be read. The file is empty.');
  });
});

test('a course that could not be opened again does not take the place of one that can', async () => {
  const library = await openLibrary({ now });
  await library.save(newHistory(course('Morning')));
  const broken = { ...course('Noon'), horse: 'unicorn' };
  expect(await library.save(newHistory(broken))).toBe(
    'The course was not saved, as it could not be opened again. The horse is "unicorn"; known are stock-horse, pony, large-horse, mule.',
  );
  expect(await library.latest()).toEqual(course('Morning'));
});

describe('what the browser does to it is told with the next step', () => {
  test('no store at all', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB');
    const library = await openLibrary({ now });
    expect(library.storedIn).toBe('memory');
    expect(library.note).toBe(
      'This browser keeps nothing between visits. Save the course to a file before you close the page.',
    );
    await library.save(newHistory(course('Morning')));
    expect(await library.latest()).toEqual(course('Morning'));
  });

  test('a store that may not be opened', async () => {
    const closed = new IDBFactory();
    closed.open = () => {
      throw new DOMException('no', 'SecurityError');
    };
    globalThis.indexedDB = closed;
    const library = await openLibrary({ now });
    expect(library.storedIn).toBe('memory');
    expect(library.note).toBe(
      'The browser does not let this page keep anything. Allow site data for it, and reload. ' +
        'Save the course to a file so that it is not lost. Until then it is here only while this page is open.',
    );
  });

  test('a store of a newer program', async () => {
    (await openDB('polewright', 9)).close();
    expect((await openLibrary({ now })).note).toMatch(/^A newer Polewright has saved courses in this browser\./);
  });

  test('an older program in another tab that a newer one waits for: it lets go, and says so on the next save', async () => {
    const library = await openLibrary({ now });
    (await openDB('polewright', 3)).close();
    expect(await library.save(newHistory(course('Morning')))).toBe(
      'The browser closed its store, perhaps for a newer Polewright in another tab. Reload this page. ' +
        'Save the course to a file so that it is not lost.',
    );
  });

  /** A store whose `put` fails so many times, and what was dropped meanwhile. */
  function failing(name: string, times: number): { readonly store: Store; readonly dropped: string[] } {
    const store = memoryStore();
    const dropped: string[] = [];
    let left = times;
    return {
      store: {
        ...store,
        async put(record, steps) {
          left -= 1;
          if (left >= 0) throw new DOMException('no', name);
          await store.put(record, steps);
        },
        async dropVersions() {
          dropped.push('versions');
        },
        async dropSteps() {
          dropped.push('steps');
        },
      },
      dropped,
    };
  }

  test.each([
    [1, ['steps']],
    [2, ['steps', 'versions']],
  ])('no room %i times: the history gives way to the course, and then the earlier states', async (times, gone) => {
    const { store, dropped } = failing('QuotaExceededError', times);
    const library = libraryOn(store, { storedIn: 'browser', note: undefined, now });
    expect(await library.save(newHistory(course('Morning')))).toBeUndefined();
    expect(dropped).toEqual(gone);
    expect(await library.latest()).toEqual(course('Morning'));
  });

  test('no room even so; and the trouble is over with the next good save', async () => {
    const { store } = failing('QuotaExceededError', 3);
    const library = libraryOn(store, { storedIn: 'browser', note: undefined, now });
    const why =
      'The browser has no room left for this page. Delete courses that are no longer needed. ' +
      'Save the course to a file so that it is not lost.';
    expect(await library.save(newHistory(course('Morning')))).toBe(why);
    expect(library.lastError()).toBe(why);
    expect(await library.save(newHistory(course('Morning')))).toBeUndefined();
    expect(library.lastError()).toBeUndefined();
  });

  test('anything else', async () => {
    const broken: Store = { ...memoryStore(), records: () => Promise.reject(new DOMException('disk', 'UnknownError')) };
    const library = libraryOn(broken, { storedIn: 'browser', note: undefined, now });
    expect(await library.latest()).toBeUndefined();
    expect(await library.courses()).toEqual([]);
    expect(library.lastError()).toBe(
      'The browser could not use its store (UnknownError). Save the course to a file so that it is not lost.',
    );
  });
});
