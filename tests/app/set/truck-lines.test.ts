import { describe, expect, test } from 'vitest';
import { readLine, readStockCount, withCount, withLine, withoutLine } from '../../../src/app/set/truck-lines.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';

const typed = { kind: 'pole', title: '', count: '4', sizes: { length: '9 ft', shape: '' } };

describe('a line typed for the truck', () => {
  test('keeps only the sizes that were typed and is named by them', () => {
    expect(readLine(typed, 'ft')).toEqual({
      line: { kind: 'pole', title: `Pole, length 9'`, values: { length: expect.closeTo(9 * FOOT, 9) }, count: 4 },
    });
  });

  test('keeps the name that a person gives it', () => {
    expect(readLine({ ...typed, title: ' Old poles ' }, 'ft')).toMatchObject({ line: { title: 'Old poles' } });
  });

  test('is refused field by field', () => {
    const read = readLine({ ...typed, count: 'some', sizes: { length: '90 ft', thickness: 'thick' } }, 'ft');
    if (!('refusals' in read)) throw new Error('it was taken');
    expect(Object.keys(read.refusals).sort()).toEqual(['count', 'length', 'thickness']);
    expect(read.refusals.length).toMatch(/20'/);
    expect(read.refusals.count).toBe('Write a whole number from 0 to 10000.');
  });

  test('can be put on and taken off, and the course can be kept with it', () => {
    const read = readLine(typed, 'ft');
    if (!('line' in read)) throw new Error('it was refused');
    const before = blankCourse();
    const twice = withLine(withLine(before, read.line), read.line);
    const ids = twice.truck.map((stock) => stock.id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(readCourse(writeCourse(twice)).kind).toBe('read');
    expect(withoutLine(withoutLine(twice, ids.at(-1) ?? ''), ids.at(-2) ?? '').truck).toEqual(before.truck);
  });
});

test('a count is whole and not below nought', () => {
  expect(readStockCount(' 0 ')).toBe(0);
  for (const text of ['-1', '1.5', '', 'a few', '10001'])
    expect(readStockCount(text), text).toMatch(/^Write a whole number/);
  const [first] = blankCourse().truck;
  expect(withCount(blankCourse(), first?.id ?? '', 3).truck[0]?.count).toBe(3);
});
