/** Nothing is listed that has no title, no seed and no test: what is added to a list is added everywhere. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../src/core/checks/checks.ts';
import { CONSTRAINT_KINDS } from '../src/core/constraints/constraints.ts';
import type { Course } from '../src/core/course/course.ts';
import { readCourse } from '../src/core/files/read.ts';
import { OBSTACLE_KINDS } from '../src/core/obstacles/obstacles.ts';
import { PIECE_KINDS } from '../src/core/pieces/pieces.ts';
import { SHEETS } from '../src/sheets/sheets.ts';

function coursesIn(folder: string): Course[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.course.json'))
    .map((name) => {
      const read = readCourse(readFileSync(`${folder}/${name}`, 'utf8'));
      if (read.kind === 'refused') throw new Error(`${folder}/${name}: ${read.why}`);
      return read.course;
    });
}

const SEEDS = coursesIn('seeds/starters');
const OBSTACLES = SEEDS.flatMap((course) => course.layouts.flatMap((layout) => layout.obstacles));

describe.each([
  ['piece kinds', PIECE_KINDS],
  ['obstacle kinds', OBSTACLE_KINDS],
  ['constraint kinds', CONSTRAINT_KINDS],
  ['sheets', SHEETS],
])('%s', (_, list) => {
  test('have ids that can stand in files, each once, and a title', () => {
    const ids = list.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, title } of list) {
      expect(id).toMatch(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/);
      expect(title, id).not.toBe('');
    }
  });
});

test.each(PIECE_KINDS.map(({ id }) => id))('a seed has a %s', (id) => {
  expect(OBSTACLES.some(({ pieces }) => pieces.some(({ kind }) => kind === id))).toBe(true);
});

test.each(OBSTACLE_KINDS.map(({ id }) => id))('a seed has the obstacle %s', (id) => {
  expect(OBSTACLES.some(({ kind }) => kind === id)).toBe(true);
});

test.each(CONSTRAINT_KINDS.map(({ id }) => id))('a kept file holds something by %s', (id) => {
  const kept = coursesIn('seeds/fixtures/constraints').flatMap((course) => course.layouts);
  const own = kept.flatMap(({ obstacles }) => obstacles.flatMap(({ constraints }) => constraints));
  expect([...own, ...kept.flatMap(({ constraints }) => constraints)].some(({ kind }) => kind === id)).toBe(true);
});

// That a planted fault shows each check is tested in core/checks/faults.test.ts.
test.each(CHECKS)('$id says what it asks and why', ({ says, because }) => {
  expect(says).not.toBe('');
  expect(because).not.toBe('');
});

test.each(SHEETS.map(({ id }) => id))('the sheet %s has a test of its own', (id) => {
  expect(existsSync(`tests/sheets/${id}.test.ts`)).toBe(true);
});
