import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import fc from 'fast-check';
import { openDB } from 'idb';
import { beforeEach, describe, expect, test } from 'vitest';
import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { addObstacle, shiftByKeys } from '../../src/core/course/edit-obstacles.ts';
import {
  type History,
  newHistory,
  presentCourse,
  redo,
  undo,
  withRecalled,
  withStep,
} from '../../src/core/course/history.ts';
import { writeCourse } from '../../src/core/files/write.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { pose } from '../../src/core/plane/pose.ts';
import { type Library, libraryOn, openLibrary } from '../../src/storage/library.ts';
import { MOST_STEPS } from '../../src/storage/step-log.ts';
import { memoryStore, type StepChange, type Store } from '../../src/storage/store.ts';

const course = (title: string): Course => blankCourse({ title });
const now = () => 1_000_000;
const SLOT = 'course-1';

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

/** A history of steps with these titles, the first of which was opened. */
function historyOf(...titles: readonly [string, ...string[]]): History {
  const [first, ...later] = titles;
  return later.reduce((history, title) => withStep(history, course(title), `Do ${title}`), newHistory(course(first)));
}

function titlesOf({ steps }: History): readonly string[] {
  return steps.map((step) => step.course.title);
}

/** What a page that opens the slot anew has in the end. */
async function reopened(library: Library, slot = SLOT): Promise<History> {
  const reading = await library.load(slot);
  if (reading.kind === 'refused') throw new Error(reading.why);
  const recalled = await library.recall(slot);
  const history = newHistory(reading.course);
  return recalled === undefined ? history : withRecalled(history, recalled);
}

/** What a page has in the end that opens the backup of one that closed. */
async function restored(library: Library, backup: string): Promise<History> {
  const opened = await library.restore(backup);
  const recalled = await library.recall(SLOT);
  if (opened === undefined || recalled === undefined) throw new Error('the backup and its steps were kept');
  return withRecalled(newHistory(opened.course), recalled);
}

/** A store in memory that counts what it is told to write. */
function countingStore(): { readonly store: Store; readonly changes: (StepChange | undefined)[] } {
  const store = memoryStore();
  const changes: (StepChange | undefined)[] = [];
  return {
    changes,
    store: {
      ...store,
      put(record, steps) {
        changes.push(steps);
        return store.put(record, steps);
      },
    },
  };
}

const inMemory = (store: Store) => libraryOn(store, { storedIn: 'memory', note: undefined, now });

describe.each(['browser', 'memory'] as const)('a history in the %s', (keeps) => {
  const open = async () => (keeps === 'browser' ? openLibrary({ now }) : inMemory(memoryStore()));

  test('has undo and redo, with their labels, when its course is opened again', async () => {
    const library = await open();
    const history = undo(historyOf('a', 'b', 'c'));
    await library.save(history, SLOT);
    const again = await reopened(library);
    expect(titlesOf(again)).toEqual(['a', 'b', 'c']);
    expect(again.steps.map(({ label }) => label)).toEqual(['Open', 'Do b', 'Do c']);
    expect(presentCourse(again).title).toBe('b');
    expect(presentCourse(undo(again))).toEqual(course('a'));
    expect(presentCourse(redo(again))).toEqual(course('c'));
  });

  test('has none of the steps that were replaced', async () => {
    const library = await open();
    const history = historyOf('a', 'b', 'c', 'd');
    await library.save(history, SLOT);
    await library.save(withStep(undo(undo(history)), course('e'), 'Do e'), SLOT);
    expect(titlesOf(await reopened(library))).toEqual(['a', 'b', 'e']);
  });

  test('has the last hundred steps', async () => {
    const library = await open();
    const titles = Array.from({ length: MOST_STEPS + 5 }, (_, i) => `step ${i}`);
    const [first = '', ...later] = titles;
    let history = newHistory(course(first));
    for (const title of later) {
      history = withStep(history, course(title), `Do ${title}`);
      // A person saves now and then.
      if (history.steps.length % 7 === 0) await library.save(history, SLOT);
    }
    await library.save(history, SLOT);
    expect(titlesOf(await reopened(library))).toEqual(titles.slice(-MOST_STEPS));
  });

  test('belongs to its slot, and goes with it', async () => {
    const library = await open();
    await library.save(historyOf('a', 'b'), SLOT);
    await library.save(historyOf('x', 'y', 'z'), 'course-10');
    expect(titlesOf(await reopened(library))).toEqual(['a', 'b']);
    expect(titlesOf(await reopened(library, 'course-10'))).toEqual(['x', 'y', 'z']);
    await library.remove(SLOT);
    await library.save(newHistory(course('new')), SLOT);
    expect(titlesOf(await reopened(library))).toEqual(['new']);
  });

  test('another history in the slot takes the place of the one that was there', async () => {
    const library = await open();
    await library.save(historyOf('a', 'b', 'c'), SLOT);
    await library.save(historyOf('x', 'y'), SLOT);
    expect(titlesOf(await reopened(library))).toEqual(['x', 'y']);
  });
});

test('only new steps are written', async () => {
  const { store, changes } = countingStore();
  const library = inMemory(store);
  const history = historyOf('a', 'b');
  await library.save(history, SLOT);
  await library.save(withStep(history, course('c'), 'Do c'), SLOT);
  await library.save(undo(withStep(history, course('c'), 'Do c')), SLOT);
  const written = changes.map((change) => change?.put.map(({ label }) => label));
  expect(written.slice(0, 2)).toEqual([['Open', 'Do b'], ['Do c']]);
  const again = await reopened(library);
  await library.save(again, SLOT);
  await library.save(withStep(again, course('d'), 'Do d'), SLOT);
  expect(changes.slice(-2).map((change) => change?.put.map(({ label }) => label))).toEqual([[], ['Do d']]);
});

test('to look at a course leaves its history as it is', async () => {
  const { store, changes } = countingStore();
  const library = inMemory(store);
  const history = historyOf('a', 'b');
  await library.save(history, SLOT);
  expect(await library.read(SLOT)).toMatchObject({ kind: 'read', course: { title: 'b' } });
  await library.save(withStep(history, course('c'), 'Do c'), SLOT);
  expect(changes.at(-1)?.put.map(({ label }) => label)).toEqual(['Do c']);
  expect(await library.read('course-9')).toMatchObject({ kind: 'refused' });
});

describe('a course that was opened, and whose steps were not read yet', () => {
  test('may be saved as it is: nothing of its history is lost', async () => {
    const library = inMemory(memoryStore());
    await library.save(undo(historyOf('a', 'b', 'c')), SLOT);
    const reading = await library.load(SLOT);
    if (reading.kind === 'refused') throw new Error(reading.why);
    await library.save(newHistory(reading.course), SLOT);
    const again = await reopened(library);
    expect(titlesOf(again)).toEqual(['a', 'b', 'c']);
    expect(presentCourse(again).title).toBe('b');
  });

  test('may be changed meanwhile: the change stays, in place of what was undone', async () => {
    const library = inMemory(memoryStore());
    await library.save(undo(historyOf('a', 'b', 'c')), SLOT);
    const reading = await library.load(SLOT);
    if (reading.kind === 'refused') throw new Error(reading.why);
    let history = newHistory(reading.course);
    const recalling = library.recall(SLOT, async () => {
      if (history.steps.length > 1) return;
      history = withStep(history, course('new'), 'Do new');
      await library.save(history, SLOT);
    });
    const recalled = await recalling;
    if (recalled === undefined) throw new Error('the steps were kept');
    history = withRecalled(history, recalled);
    expect(titlesOf(history)).toEqual(['a', 'b', 'new']);
    await library.save(undo(history), SLOT);
    const again = await reopened(library);
    expect(titlesOf(again)).toEqual(['a', 'b', 'new']);
    expect(presentCourse(again).title).toBe('b');
  });
});

test('steps that are read share what an edit would have shared, so that undo gives the same obstacles', async () => {
  const built = ['fan', 'box'].map((kind) => {
    const obstacle = buildObstacle(`${kind}-1`, kind, {}, pose(20, 15));
    if ('why' in obstacle) throw new Error(obstacle.why);
    return obstacle;
  });
  const first = built.reduce(addObstacle, blankCourse());
  const moved = withStep(newHistory(first), shiftByKeys(first, ['fan-1'], 3, 4), 'Move the fan');
  const library = inMemory(memoryStore());
  await library.save(undo(withStep(moved, { ...presentCourse(moved), notes: 'Rake first' }, 'Note')), SLOT);
  const again = await reopened(library);
  const [before, present, after] = again.steps.map((step) => currentLayout(step.course).obstacles);
  expect(before?.[1]).toBe(present?.[1]);
  expect(before?.[0]).not.toBe(present?.[0]);
  expect(before?.[0]?.pieces).toBe(present?.[0]?.pieces);
  expect(after).toBe(present);
});

test('a step that cannot be read ends the history there, never the course', async () => {
  const library = await openLibrary({ now });
  await library.save(undo(undo(historyOf('a', 'b', 'c', 'd', 'e'))), SLOT);
  const db = await openDB('polewright', 2);
  await db.put('steps', { slot: SLOT, number: 1, label: 'Open', text: '{"format":' }, [SLOT, 1]);
  await db.put('steps', { slot: SLOT, number: 5, label: '', text: writeCourse(course('e')) }, [SLOT, 5]);
  db.close();
  expect(titlesOf(await reopened(library))).toEqual(['b', 'c', 'd']);
});

test('a database without steps is opened with all that it has, and keeps steps from then on', async () => {
  const old = await openDB('polewright', 1, {
    upgrade(database) {
      database.createObjectStore('courses', { keyPath: 'slot' });
      database.createObjectStore('versions');
    },
  });
  const record = { slot: SLOT, title: 'Morning', saved: 5, text: writeCourse(course('Morning')) };
  await old.put('courses', record);
  await old.put('versions', { ...record, number: 1, begun: 5 }, [SLOT, 1]);
  old.close();
  const library = await openLibrary({ now });
  expect(await library.courses()).toEqual([{ slot: SLOT, title: 'Morning', saved: 5 }]);
  expect(await library.earlier(SLOT)).toEqual([{ number: 1, saved: 5 }]);
  const opened = await reopened(library);
  expect(titlesOf(opened)).toEqual(['Morning']);
  await library.save(withStep(opened, course('Noon'), 'Do Noon'), SLOT);
  expect(titlesOf(await reopened(library))).toEqual(['Morning', 'Noon']);
});

describe('when there is no room', () => {
  /** A store in memory that takes so many steps in all, and no more. */
  function smallStore(most: number): Store {
    const store = memoryStore();
    let taken = 0;
    return {
      ...store,
      async put(record, steps) {
        if (steps !== undefined && taken + steps.put.length > most) throw new DOMException('no', 'QuotaExceededError');
        taken += steps?.put.length ?? 0;
        await store.put(record, steps);
      },
      async dropSteps() {
        taken = 0;
        await store.dropSteps();
      },
    };
  }

  test('the course is kept and its history goes; the steps after that are kept again', async () => {
    const library = inMemory(smallStore(3));
    let history = historyOf('a', 'b', 'c');
    await library.save(history, SLOT);
    history = withStep(history, course('d'), 'Do d');
    expect(await library.save(history, SLOT)).toBeUndefined();
    expect(titlesOf(await reopened(library))).toEqual(['d']);
    // Another page would go on so; this one goes on with what it has.
    const again = inMemory(smallStore(3));
    let longer = historyOf('a', 'b', 'c');
    await again.save(longer, SLOT);
    for (const title of ['d', 'e']) {
      longer = withStep(longer, course(title), `Do ${title}`);
      expect(await again.save(longer, SLOT)).toBeUndefined();
    }
    expect(titlesOf(await reopened(again))).toEqual(['d', 'e']);
  });
});

describe('the backup of a page that closes', () => {
  test('has the steps that were not saved, and the place in the history', async () => {
    const library = await openLibrary({ now });
    const history = historyOf('a', 'b');
    await library.save(history, SLOT);
    const further = undo(withStep(withStep(history, course('c'), 'Do c'), course('d'), 'Do d'));
    const backup = library.backup(further, SLOT);
    const next = await openLibrary({ now });
    expect(await next.restore(backup)).toEqual({ slot: SLOT, course: course('c'), isSaved: true });
    const again = await reopened(next);
    expect(titlesOf(again)).toEqual(['a', 'b', 'c', 'd']);
    expect(presentCourse(again).title).toBe('c');
  });

  test('of a page that only went back takes nothing away', async () => {
    const library = await openLibrary({ now });
    const history = historyOf('a', 'b', 'c');
    await library.save(history, SLOT);
    const next = await openLibrary({ now });
    await next.restore(library.backup(undo(undo(history)), SLOT));
    const again = await reopened(next);
    expect(titlesOf(again)).toEqual(['a', 'b', 'c']);
    expect(presentCourse(again).title).toBe('a');
  });

  test('of an older program has the course', async () => {
    const library = await openLibrary({ now });
    const text = `${SLOT}\n${writeCourse(course('Morning'))}`;
    expect(await library.restore(text)).toEqual({ slot: SLOT, course: course('Morning'), isSaved: false });
  });

  test.each(['', '{', '{"slot": 3}', '{"slot":"a","text":"b"}', 'slot\nnothing'])(
    'that is damaged is none: %s',
    async (text) => {
      expect(await (await openLibrary({ now })).restore(text)).toBeUndefined();
    },
  );

  test('whose steps are damaged has the course', async () => {
    const library = await openLibrary({ now });
    const text = JSON.stringify({ slot: SLOT, text: writeCourse(course('Morning')), present: 2, change: { put: 7 } });
    expect(await library.restore(text)).toMatchObject({ course: course('Morning'), isSaved: false });
  });
});

test('whatever is done, saved and opened again, undo and redo lead where they led before', async () => {
  const action = fc.constantFrom('step', 'step', 'undo', 'redo', 'save', 'reopen', 'open', 'backup');
  await fc.assert(
    fc.asyncProperty(fc.array(action, { maxLength: 40 }), async (actions) => {
      const store = memoryStore();
      let library = inMemory(store);
      let history = newHistory(course('step 0'));
      let count = 0;
      await library.save(history, SLOT);
      for (const each of actions) {
        if (each === 'step') history = withStep(history, course(`step ${++count}`), `Do ${count}`);
        if (each === 'undo') history = undo(history);
        if (each === 'redo') history = redo(history);
        if (each === 'save') await library.save(history, SLOT);
        if (each === 'reopen' || each === 'open' || each === 'backup') {
          const backup = library.backup(history, SLOT);
          if (each !== 'backup') await library.save(history, SLOT);
          if (each !== 'open') library = inMemory(store);
          const before = history;
          history = each === 'backup' ? await restored(library, backup) : await reopened(library);
          expect(titlesOf(history)).toEqual(titlesOf(before));
          expect(history.present).toBe(before.present);
          expect(history.steps.map(({ label }) => label)).toEqual(before.steps.map(({ label }) => label));
        }
      }
      const numbers = (await store.steps(SLOT)).map(({ number }) => number);
      expect(numbers).toEqual(numbers.map((_, i) => (numbers[0] ?? 0) + i));
    }),
    { numRuns: 60 },
  );
});
