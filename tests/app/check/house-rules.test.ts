import { describe, expect, test } from 'vitest';
import {
  ASKED,
  bookWords,
  houseWords,
  limitTitle,
  readHouseRule,
  withHouseRule,
  withoutHouseRule,
} from '../../../src/app/check/house-rules.ts';
import { bandOf, limitsOf } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';

const typed = { name: 'gap.jog', least: '3 ft', most: '4 ft', reason: 'Young horses' };

describe('a house rule', () => {
  test('is read in the unit of the quantity that it bounds', () => {
    expect(readHouseRule(typed, 'ft')).toEqual({
      rule: { least: expect.closeTo(3 * FOOT, 9), most: expect.closeTo(4 * FOOT, 9), reason: 'Young horses' },
    });
    const seconds = (most: string) => readHouseRule({ ...typed, name: 'obstacle.seconds', least: '', most }, 'ft');
    for (const text of ['90', '90 s', '1 min 30 s', '1:30', '1 min 30']) {
      expect(seconds(text), text).toEqual({ rule: { most: 90, reason: 'Young horses' } });
    }
    expect(readHouseRule({ ...typed, name: 'poles.count', least: '', most: '12' }, 'ft')).toMatchObject({
      rule: { most: 12 },
    });
  });

  test.each([
    ['nothing bounded', { least: '', most: ' ' }, 'least', 'Give the least, the most, or both.'],
    ['no reason', { reason: ' ' }, 'reason', 'Give a reason: it is shown with every finding.'],
    ['ends the wrong way round', { least: '5 ft', most: '4 ft' }, 'most', "The most, 4', is less than the least, 5'."],
    ['no length', { most: 'far' }, 'most', /far/],
    ['no time', { name: 'obstacle.seconds', least: '', most: 'soon' }, 'most', /1 min 30 s/],
  ] as const)('with %s is refused', (_, next, field, why) => {
    const read = readHouseRule({ ...typed, ...next }, 'ft');
    if (!('refusals' in read)) throw new Error('it was taken');
    expect(read.refusals[field]).toMatch(why);
  });

  test('comes before the book, says so, and goes again without a trace', () => {
    const read = readHouseRule(typed, 'ft');
    if (!('rule' in read)) throw new Error('it was refused');
    const before = blankCourse();
    const course = withHouseRule(before, 'gap.jog', read.rule);
    const limit = limitsOf(course)['gap.jog'];
    expect(limit?.house).toBe('Young horses');
    expect(limit && bandOf(limit).most).toBeCloseTo(4 * FOOT, 9);
    expect(houseWords('gap.jog', read.rule, 'ft')).toBe(`3' to 4'`);
    expect(bookWords(course, 'gap.jog')).toBe(bookWords(before, 'gap.jog'));
    expect(readCourse(writeCourse(course)).kind).toBe('read');
    expect(withoutHouseRule(course, 'gap.jog')).toEqual(before);
  });
});

test('every limit that a check asks for has a title in words', () => {
  expect(ASKED.length).toBeGreaterThan(10);
  for (const name of ASKED) expect(limitTitle(name), name).not.toBe(name);
});
