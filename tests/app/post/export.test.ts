import { expect, test } from 'vitest';
import { fileName } from '../../../src/app/post/export.ts';

test.each([
  ['Novice trail, Saturday', 'novice-trail-saturday'],
  ['  Élan / 2  ', 'elan-2'],
  ['???', 'course'],
])('the file of %o is called %s', (title, name) => {
  expect(fileName(title)).toBe(name);
});
