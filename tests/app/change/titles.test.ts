import { expect, test } from 'vitest';
import { classesOf, classesWords, titleRefusal } from '../../../src/app/change/titles.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { LONGEST_NAME } from '../../../src/core/course/course.ts';
import { addClass } from '../../../src/core/course/edit-day.ts';
import { branchLayout } from '../../../src/core/course/layouts.ts';

test('a name has at least one sign and at most as many as a file may have', () => {
  expect(titleRefusal('  ')).toBe('A layout needs a name.');
  expect(titleRefusal(` ${'x'.repeat(LONGEST_NAME)} `)).toBeUndefined();
  expect(titleRefusal('x'.repeat(LONGEST_NAME + 1))).toBe('This name has 121 characters; the most is 120.');
});

test('the classes that ride a layout are named before it is deleted', () => {
  const two = branchLayout(blankCourse());
  expect(classesOf(two, 'layout-1')).toEqual([]);
  const day = ['Novice', 'Open', 'Led'].reduce(
    (course, title, i) => addClass(course, { layout: i === 1 ? 'layout-2' : 'layout-1', title }),
    two,
  );
  expect(classesWords(classesOf(day, 'layout-1'))).toBe(
    'The classes “Novice” and “Led” of the day ride it and are deleted with it.',
  );
  expect(classesWords(classesOf(day, 'layout-2'))).toBe('The class “Open” of the day rides it and is deleted with it.');
});
