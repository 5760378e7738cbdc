import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { FIRST_COURSE } from '../../../src/app/file/first-course.ts';
import { readCourse } from '../../../src/core/files/read.ts';

test('the course of a first visit is what the reader makes of its file, which needs no repair', () => {
  const text = readFileSync('seeds/starters/larkhollow-novice.course.json', 'utf8');
  expect(readCourse(text)).toEqual({ kind: 'read', course: FIRST_COURSE, repairs: [] });
});
