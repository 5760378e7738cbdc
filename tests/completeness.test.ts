/** Nothing is listed that has no title, no seed and no test: what is added to a list is added everywhere. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../src/core/checks/checks.ts';
import { LIMITS } from '../src/core/checks/rulebooks/limits.ts';
import { CONSTRAINT_KINDS } from '../src/core/constraints/constraints.ts';
import type { Course } from '../src/core/course/course.ts';
import { readCourse } from '../src/core/files/read.ts';
import { OBSTACLE_KINDS } from '../src/core/obstacles/obstacles.ts';
import { PIECE_KINDS } from '../src/core/pieces/pieces.ts';
import { survey } from '../src/core/survey.ts';
import { SHEETS } from '../src/sheets/sheets.ts';

function coursesIn(folder: string, ending = '.course.json'): Course[] {
  return readdirSync(folder)
    .filter((name) => name === ending || (ending.startsWith('.') && name.endsWith(ending)))
    .map((name) => {
      const read = readCourse(readFileSync(`${folder}/${name}`, 'utf8'));
      if (read.kind === 'refused') throw new Error(`${folder}/${name}: ${read.why}`);
      return read.course;
    });
}

/** The sources that lie outside a folder, without their import lines. */
function sourcesOutside(folder: string): readonly { readonly path: string; readonly text: string }[] {
  return readdirSync('src', { recursive: true, encoding: 'utf8' })
    .map((name) => `src/${name}`)
    .filter((path) => /\.tsx?$/.test(path) && !path.startsWith(`${folder}/`))
    .map((path) => ({ path, text: readFileSync(path, 'utf8').replace(/^import .*$/gm, '') }));
}

const OBSTACLES = [...coursesIn('seeds/starters'), ...coursesIn('seeds/fixtures/obstacles')].flatMap((course) =>
  course.layouts.flatMap((layout) => layout.obstacles),
);

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

test.each(OBSTACLE_KINDS.map(({ id }) => id))('a fixture has the obstacle %s', (id) => {
  const [course] = coursesIn('seeds/fixtures/obstacles', `${id}.course.json`);
  expect(course?.layouts[0]?.obstacles.map(({ kind }) => kind)).toEqual([id]);
  expect(course && survey(course).line.breaks).toEqual([]);
});

test.each([...OBSTACLE_KINDS, ...PIECE_KINDS])('$id names only limits that a book can set', ({ limits = [] }) => {
  expect(limits.filter((name) => !(name in LIMITS))).toEqual([]);
});

test.each(OBSTACLE_KINDS)('$id has the parameter by which its gaps are set', ({ gapParam, params }) => {
  if (gapParam !== undefined) expect(params[gapParam.param]?.kind).toBe('length');
});

// Ids that are the rule books' own words for a piece, or a move of the horse, stand in other places too.
const OTHER_WORDS = new Set([...PIECE_KINDS.map(({ id }) => id), 'side-pass']);

test.each(OBSTACLE_KINDS.map(({ id }) => id).filter((id) => !OTHER_WORDS.has(id)))(
  'no file outside obstacles/ names the kind %s: what others need of it, it declares',
  (id) => {
    const literal = new RegExp(`['"]${id}['"]`);
    expect(sourcesOutside('src/core/obstacles').filter(({ text }) => literal.test(text))).toEqual([]);
  },
);

test('no file outside obstacles/ asks for an obstacle by its kind, or by how the kind begins', () => {
  const asks = /\bobstacle\.kind [!=]==|\bkind\.startsWith\(/;
  expect(sourcesOutside('src/core/obstacles').filter(({ text }) => asks.test(text))).toEqual([]);
});

// An obstacle is built of constraints by name; whoever else wants a certain kind imports it. What a crew observes has kinds of its
// own, some of which are called as the constraint that they bring about.
test.each(CONSTRAINT_KINDS.map(({ id }) => id))('the desk, the checks and the app ask for %s by its object', (id) => {
  const asks = new RegExp(`kind: '${id}', grips|case '${id}':|constraint.kind [!=]== '${id}'`);
  const others = sourcesOutside('src/core/constraints').filter(({ path }) => !path.startsWith('src/core/setout/'));
  expect(others.filter(({ text }) => asks.test(text))).toEqual([]);
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
