import fc from 'fast-check';
import { expect, test } from 'vitest';
import { printTimeOfDay, readTimeOfDay } from '../../../src/core/measure/time-of-day.ts';
import '../../property-seed.ts';

test.each([
  [0, '12:00 am'],
  [8.5 * 3600, '8:30 am'],
  [12 * 3600, '12:00 pm'],
  [13 * 3600 + 299, '1:05 pm'],
  [24 * 3600 + 60, '12:01 am, next day'],
  [86_399, '12:00 am, next day'],
  [Number.NaN, '–'],
])('%d seconds are %s', (time, text) => {
  expect(printTimeOfDay(time)).toBe(text);
});

test.each([
  ['8', 8],
  ['8:30', 8.5],
  [' 8.30 AM ', 8.5],
  ['12 am', 0],
  ['12:15 pm', 12.25],
  ['1 p.m.', 13],
  ['13:45', 13.75],
  ['noon', 12],
])('%s is read', (text, hours) => {
  expect(readTimeOfDay(text)).toEqual({ kind: 'read', value: hours * 3600 });
});

test.each(['', 'eight', '25:00', '8:75', '13 pm', '0 am', '8:5'])(
  '"%s" is refused with what would be right',
  (text) => {
    const read = readTimeOfDay(text);
    expect(read.kind === 'refused' && read.why).toContain('such as 8:30');
  },
);

test('what is printed is read back', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1439 }), (minutes) => {
      expect(readTimeOfDay(printTimeOfDay(minutes * 60))).toEqual({ kind: 'read', value: minutes * 60 });
    }),
  );
});
