import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printTimeOfDay, readTimeOfDay } from '../../../src/core/measure/time-of-day.ts';

describe('a time of the day', () => {
  test.each([
    ['8', 8 * 3600],
    ['08:30', 8.5 * 3600],
    ['8.30', 8.5 * 3600],
    ['14:05', 14 * 3600 + 300],
    ['2:05 pm', 14 * 3600 + 300],
    ['12 am', 0],
    ['12:30 p.m.', 12.5 * 3600],
    ['24:00', 86_400],
  ])('%s is read as %i seconds', (text, value) => {
    expect(readTimeOfDay(text)).toEqual({ kind: 'read', value });
  });

  test.each(['', 'noon', '8:5', '8:75', '25:00', '13 pm', '0 am', '-1:00', '8:30:10', 'm', '8 m'])(
    '%s is refused with an example',
    (text) => {
      const read = readTimeOfDay(text);
      expect(read.kind).toBe('refused');
      if (read.kind === 'refused') expect(read.why).toContain('8:30');
    },
  );

  test('what is printed is read again to the minute', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1440 }), (minutes) => {
        expect(readTimeOfDay(printTimeOfDay(minutes * 60))).toEqual({ kind: 'read', value: minutes * 60 });
      }),
    );
  });
});
