import { expect, test } from 'vitest';
import { printDuration, printMinutes, readDuration } from '../../../src/core/measure/duration.ts';

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

test.each<[string, 's' | 'min', number]>([
  ['30', 's', 30],
  ['30', 'min', 1800],
  ['30 s', 'min', 30],
  ['1 min 30 s', 's', 90],
  ['4 min 05 s', 'min', 245],
  ['1 h 02 min', 's', 3720],
  ['1.5 h', 's', 5400],
  ['1,5 min', 's', 90],
  ['1:30', 'min', 90],
  ['1:30 h', 's', 5400],
  [' 2  Hours ', 's', 7200],
  ['10min', 's', 600],
  ['1 min 30', 'min', 90],
  ['1 h 30', 's', 5400],
])('%s in a field of %s is read as %d seconds', (text, bare, seconds) => {
  expect(readDuration(text, bare)).toEqual({ kind: 'read', value: seconds });
});

test.each(['', 'soon', '-5', '5 parsecs', '30 s 5', '1 30', '25 h', '1:75'])(
  '%s is no time, and it is said why',
  (text) => {
    const reading = readDuration(text, 'min');
    expect(reading.kind).toBe('refused');
  },
);

test('what is printed is read as the same', () => {
  for (const seconds of [0, 38, 60, 245, 3599, 3720, 7200]) {
    const reading = readDuration(printDuration(seconds), 's');
    expect(reading).toEqual({ kind: 'read', value: seconds });
  }
});

test.each([
  [0, 'under a minute'],
  [29, 'under a minute'],
  [30, '1 min'],
  [773, '13 min'],
  [3569, '59 min'],
  [3570, '1 h 00 min'],
  [3900, '1 h 05 min'],
  [-1, '–'],
  [Number.NaN, '–'],
])('%d s is an estimate of %s', (seconds, text) => {
  expect(printMinutes(seconds)).toBe(text);
});
