import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { currentLayout } from '../../../src/core/course/course.ts';
import { eraseByKeys, shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { sharedWith } from '../../../src/core/course/shared-structure.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';

function read(text: string) {
  const reading = readCourse(text);
  if (reading.kind === 'refused') throw new Error(reading.why);
  return reading.course;
}

const COURSE = read(readFileSync('seeds/starters/larkhollow-open.course.json', 'utf8'));
const json = fc.jsonValue({ maxDepth: 4 });

test('what equals all of the other is the other', () => {
  expect(sharedWith(read(writeCourse(COURSE)), COURSE)).toBe(COURSE);
  fc.assert(fc.property(json, (value) => Object.is(sharedWith(structuredClone(value), value), value)));
});

test('it is the same value, whatever it is shared with', () => {
  fc.assert(
    fc.property(json, json, (value, like) => {
      expect(sharedWith(structuredClone(value), like)).toEqual(value);
    }),
  );
});

test('of a moved obstacle the others and its own pieces are the same objects', () => {
  const moved = read(writeCourse(shiftByKeys(COURSE, [currentLayout(COURSE).obstacles[2]?.id ?? ''], 1, 0)));
  const course = sharedWith(moved, COURSE);
  const [before, after] = [currentLayout(COURSE).obstacles, currentLayout(course).obstacles];
  expect(course.truck).toBe(COURSE.truck);
  expect(after.map((obstacle, i) => obstacle === before[i])).toEqual(before.map((_, i) => i !== 2));
  expect(after[2]?.pieces).toBe(before[2]?.pieces);
});

test('an obstacle that is gone does not part those after it from themselves', () => {
  const [first, ...others] = currentLayout(COURSE).obstacles;
  const course = sharedWith(read(writeCourse(eraseByKeys(COURSE, [first?.id ?? '']))), COURSE);
  currentLayout(course).obstacles.forEach((obstacle, i) => {
    expect(obstacle).toBe(others[i]);
  });
});

test('what is new in it is frozen, as in an edited course', () => {
  const course = sharedWith({ ...read(writeCourse(COURSE)), notes: 'Rake first' }, COURSE);
  expect(Object.isFrozen(course)).toBe(true);
  expect(course.layouts).toBe(COURSE.layouts);
});
