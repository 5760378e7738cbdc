import fc from 'fast-check';
import { expect, test } from 'vitest';
import { courseFileName, fileName, sheetFileName } from '../../../src/core/text/file-name.ts';
import { andList, capitalized, numberList, uncapitalized } from '../../../src/core/text/sentence.ts';

test.each([
  ['Novice trail, Saturday', 'novice-trail-saturday'],
  ['Saturday: Open Trail / A', 'saturday-open-trail-a'],
  ['  Élan / 2  ', 'élan-2'],
  ['日曜 トレイル', '日曜-トレイル'],
  ['../../etc', 'etc'],
  ['???', 'course'],
  ['', 'course'],
])('the file of %o is called %s', (title, name) => {
  expect(fileName(title)).toBe(name);
  expect(courseFileName(title)).toBe(`${name}.course.json`);
  expect(sheetFileName(title, 'pattern', 'pdf')).toBe(`${name}-pattern.pdf`);
});

test('the file of a long title has a name that disks take', () => {
  for (const letter of ['a', 'é', '馬', '𠀀']) {
    const name = sheetFileName(letter.repeat(2000), 'day-folder', 'pdf');
    expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(255);
    expect(name).toMatch(new RegExp(`^${letter}{50,80}-day-folder\\.pdf$`, 'u'));
  }
});

test('a file name has no separator, no dot and no control character, and is never empty or cut inside a letter', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (title) => {
      const name = fileName(title);
      expect(name).toMatch(/^[\p{Letter}\p{Mark}\p{Number}-]+$/u);
      expect(encodeURIComponent(name)).not.toBe('');
    }),
  );
});

test.each([
  [[], ''],
  [[4], '4'],
  [[2, 1], '1 and 2'],
  [[1, 2, 3], '1 to 3'],
  [[7, 1, 3, 2, 5, 5], '1 to 3, 5 and 7'],
])('the numbers %j are listed as %o', (numbers, list) => {
  expect(numberList(numbers)).toBe(list);
});

test('lists and first letters', () => {
  expect([[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(andList)).toEqual(['', 'a', 'a and b', 'a, b and c']);
  expect([capitalized('the fan'), capitalized(''), uncapitalized('Back-through L')]).toEqual([
    'The fan',
    '',
    'back-through L',
  ]);
});
