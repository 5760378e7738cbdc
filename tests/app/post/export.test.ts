import { expect, test } from 'vitest';
import { sheetFileName } from '../../../src/app/post/export.ts';

test.each([
  ['Novice trail, Saturday', 'novice-trail-saturday'],
  ['  Élan / 2  ', 'elan-2'],
  ['???', 'course'],
])('the file of %o is called %s', (title, name) => {
  expect(sheetFileName(title)).toBe(name);
});
