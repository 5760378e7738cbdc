import { describe, expect, test } from 'vitest';
import { readCount, readFraction } from '../../../src/core/measure/count.ts';

describe('a count', () => {
  test('is a whole number', () => {
    expect(readCount(' 5 ')).toEqual({ kind: 'read', value: 5 });
    expect(readCount('0')).toEqual({ kind: 'read', value: 0 });
  });

  test.each<[string, string]>([
    ['', 'Nothing is written. Write a whole number such as 5.'],
    ['5.5', '5.5 is not a whole number. Write one such as 5.'],
    ['-3', '-3 is not a whole number. Write one such as 5.'],
    ['5 poles', '5 poles is not a whole number. Write one such as 5.'],
    ['five', 'five is not a whole number. Write one such as 5.'],
    ['9'.repeat(20), '99999999999999999999 is too large to count.'],
  ])('is not %j', (text, why) => {
    expect(readCount(text)).toEqual({ kind: 'refused', why });
  });
});

describe('a share of a whole', () => {
  test.each<[string, number]>([
    ['2/3', 2 / 3],
    ['0.67', 0.67],
    ['67 %', 0.67],
    ['67%', 0.67],
    ['⅔', 2 / 3],
    ['1', 1],
    ['0', 0],
  ])('is read from %s', (text, value) => {
    expect(readFraction(text)).toEqual({ kind: 'read', value });
  });

  test.each<[string, string]>([
    ['', 'Nothing is written. Write a share such as 2/3, 0.67 or 67 %.'],
    ['67', '67 is more than the whole. Write 67 % if percent is meant, or 1 or less.'],
    ['150 %', '150 % is more than the whole. Write 100 % or less.'],
    ['3/2', '3/2 is one or more, which a fraction here may not be. Write it as in 3 1/2 or 3.5.'],
    ['-0.5', '-0.5 is not a share of a whole. Write a share such as 2/3, 0.67 or 67 %.'],
    ['half', 'half is not a share of a whole. Write a share such as 2/3, 0.67 or 67 %.'],
    ['0.5 ft', '0.5 ft is not a share of a whole. Write a share such as 2/3, 0.67 or 67 %.'],
  ])('is not read from %j', (text, why) => {
    expect(readFraction(text)).toEqual({ kind: 'refused', why });
  });
});
