import { expect, test } from 'vitest';
import { printDuration } from '../../../src/core/measure/duration.ts';

test.each<[number, string]>([
  [0, '0 s'],
  [38.4, '38 s'],
  [59.6, '1 min 00 s'],
  [245, '4 min 05 s'],
  [3599.7, '1 h 00 min'],
  [3720, '1 h 02 min'],
  [7170, '2 h 00 min'],
  [Number.NaN, '–'],
  [-1, '–'],
])('%d seconds are printed as %s', (seconds, text) => {
  expect(printDuration(seconds)).toBe(text);
});
