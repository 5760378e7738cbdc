import { expect, test } from 'vitest';
import { comparedLayouts, createCompared } from '../../../src/app/change/compared.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { branchLayout } from '../../../src/core/course/layouts.ts';

test('at most two layouts are compared, each once', () => {
  const compared = createCompared();
  compared.compare(['a', 'a', 'b', 'c']);
  expect(compared.state().compared).toEqual(['a', 'b']);
});

test('a compared layout that is shown changes places with the one shown before', () => {
  const compared = createCompared();
  compared.compare(['a', 'b']);
  compared.focus('fan-1');
  compared.swap('shown', 'b');
  expect(compared.state()).toMatchObject({ compared: ['a', 'shown'], focused: null });
  compared.swap('b', 'other');
  expect(compared.state().compared).toEqual(['a', 'shown']);
});

test('a layout that is shown or gone is not compared', () => {
  const course = branchLayout(branchLayout(blankCourse()));
  const [first, second, third] = course.layouts.map(({ id }) => id);
  const titles = (compared: readonly string[]) => comparedLayouts(course, { compared }).map(({ id }) => id);
  expect(titles([third ?? '', first ?? ''])).toEqual([first]);
  expect(titles(['gone', second ?? ''])).toEqual([second]);
});
