import { expect, test } from 'vitest';
import { FIRST_VISIT_KEY, NEW_HERE, readFirstVisit, writeFirstVisit } from '../../src/storage/first-visit.ts';

test('what is remembered is read again; nothing means a first visit', () => {
  const kept = new Map<string, string>();
  const storage = () => ({
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => void kept.set(key, text),
  });
  expect(readFirstVisit(storage)).toBeNull();
  writeFirstVisit({ ...NEW_HERE, hints: 2 }, storage);
  expect(readFirstVisit(storage)).toEqual({ hints: 2, example: false });
});

test.each([
  [
    'storage is denied',
    () => {
      throw new Error('denied');
    },
  ],
  [
    'what is there is damaged',
    () => ({ getItem: (key: string) => (key === FIRST_VISIT_KEY ? '{"hints":"all"' : null) }),
  ],
  ['what is there is something else', () => ({ getItem: () => '{"hints":"all"}' })],
])('where %s, nobody is told anything twice', (_, storage) => {
  const read = readFirstVisit(storage as () => Pick<Storage, 'getItem'>);
  expect(read?.example).toBe(true);
  expect(read?.hints).toBeGreaterThan(3);
});

test('a storage that takes nothing does not matter', () => {
  expect(() =>
    writeFirstVisit(NEW_HERE, () => {
      throw new Error('full');
    }),
  ).not.toThrow();
});
