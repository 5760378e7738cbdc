import { expect, test } from 'vitest';
import { foundKinds, meantKind } from '../../../src/app/set/kind-search.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { palette } from '../../../src/desk/placing/palette.ts';

const GROUPS = palette();
const titles = (typed: string) => foundKinds(GROUPS, typed).flatMap(({ kinds }) => kinds.map(({ title }) => title));

test('nothing typed shows every kind, in its group', () => {
  expect(foundKinds(GROUPS, '  ')).toEqual(GROUPS);
});

test.each(OBSTACLE_KINDS)('$title is found by its title, in whatever case', ({ title }) => {
  expect(titles(title.toUpperCase())).toContain(title);
});

test.each([
  ['cavaletti', 'Raised run'],
  ['slalom', 'Marker serpentine'],
  ['lope-over', 'Run of poles'],
  ['sidepass l', 'Side pass L'],
  ['l pass side', 'Side pass L'],
  ['chute', 'Back-through lane'],
  ['letter b', 'Mailbox'],
])('%s finds %s, by a word that people use', (typed, title) => {
  expect(titles(typed)).toContain(title);
});

test('a family is found by its name, and a word begins where it begins', () => {
  expect(titles('back through').length).toBeGreaterThan(5);
  expect(titles('ox')).toEqual([]);
});

test('what nobody says finds nothing', () => {
  expect(foundKinds(GROUPS, 'unicorn')).toEqual([]);
});

test.each([
  ['back l', 'Back-through L'],
  ['side pass', 'Side pass'],
  ['bridge', 'Bridge'],
  ['box', 'Box'],
  ['water', 'Water box'],
])('of what %s finds, %s is meant', (typed, title) => {
  expect(meantKind(foundKinds(GROUPS, typed), typed)?.title).toBe(title);
});

test('nothing is meant where nothing is found', () => {
  expect(meantKind(foundKinds(GROUPS, 'unicorn'), 'unicorn')).toBeUndefined();
});
