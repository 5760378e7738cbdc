import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { MOST_ENTRIES } from '../../../src/core/course/course.ts';
import {
  addEntries,
  changeEntry,
  clearEntries,
  moveEntry,
  orderEntries,
  removeEntry,
  replaceEntries,
  startClass,
} from '../../../src/core/course/edit-entries.ts';
import { entryCount } from '../../../src/core/course/entry-count.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';

const BLANK = blankCourse({ class: { entries: 20 } });
const names = (count: number) =>
  Array.from({ length: count }, (_, i) => ({ number: String(i + 1), rider: `Rider ${i + 1}`, horse: '' }));
const THREE = addEntries(BLANK, names(3));
const DRAWN = orderEntries(THREE, ['entry-2', 'entry-3', 'entry-1'], { drawn: { seed: 7, between: 4 } });
const idsOf = ({ class: { list = [] } }: typeof BLANK) => list.map(({ id }) => id);

describe('the list of entries', () => {
  test('counts instead of the number that was given, without those who are scratched', () => {
    expect(entryCount(BLANK.class)).toBe(20);
    expect(entryCount(THREE.class)).toBe(3);
    expect(entryCount(changeEntry(THREE, 'entry-2', { scratched: true }).class)).toBe(2);
    expect(entryCount(clearEntries(THREE).class)).toBe(20);
  });

  test('grows at its end, with ids that were not there', () => {
    const more = addEntries(removeEntry(THREE, 'entry-1'), names(2));
    expect(idsOf(more)).toEqual(['entry-2', 'entry-3', 'entry-1', 'entry-4']);
    expect(addEntries(THREE, [])).toBe(THREE);
  });

  test('is replaced without a score card losing whom it knows: who is there again keeps the id', () => {
    const [one, two, three] = names(3);
    if (one === undefined || two === undefined || three === undefined) throw new Error('three are made');
    const other = { ...two, rider: 'Another' };
    const moved = { ...three, number: '33' };
    const { list = [] } = replaceEntries(THREE, [moved, { number: '9', rider: 'New', horse: '' }, other, one]).class;
    expect(list.map(({ id, number }) => `${id} ${number}`)).toEqual([
      'entry-3 33',
      'entry-4 9',
      'entry-2 2',
      'entry-1 1',
    ]);
    expect(replaceEntries(THREE, [])).toEqual(BLANK);
  });

  test('goes with its last entry', () => {
    const one = addEntries(BLANK, names(1));
    expect(removeEntry(one, 'entry-1')).toEqual(BLANK);
    expect(clearEntries(BLANK)).toBe(BLANK);
  });

  test('has an entry moved to a place, and no further than its ends', () => {
    expect(idsOf(moveEntry(THREE, 'entry-1', 1))).toEqual(['entry-2', 'entry-1', 'entry-3']);
    expect(idsOf(moveEntry(THREE, 'entry-1', 99))).toEqual(['entry-2', 'entry-3', 'entry-1']);
    expect(moveEntry(THREE, 'entry-1', -5)).toBe(THREE);
  });

  test('knows its draw until the order or who is on it changes', () => {
    expect(DRAWN.class.drawn).toEqual({ seed: 7, between: 4 });
    expect(changeEntry(DRAWN, 'entry-1', { scratched: true, late: 300 }).class.drawn).toBeDefined();
    expect(moveEntry(DRAWN, 'entry-1', 0).class.drawn).toBeUndefined();
    expect(removeEntry(DRAWN, 'entry-1').class.drawn).toBeUndefined();
    expect(addEntries(DRAWN, names(1)).class.drawn).toBeUndefined();
    expect(replaceEntries(DRAWN, names(2)).class.drawn).toBeUndefined();
    expect(orderEntries(DRAWN, ['entry-1', 'entry-2', 'entry-3']).class.drawn).toBeUndefined();
  });

  test('takes a field away with undefined', () => {
    const late = changeEntry(THREE, 'entry-1', { late: 300 });
    expect(late.class.list?.[0]?.late).toBe(300);
    expect(changeEntry(late, 'entry-1', { late: undefined })).toEqual(THREE);
    expect(startClass(startClass(THREE, 9 * 3600), undefined)).toEqual(THREE);
  });

  test('refuses what is not there, what is no order, and too many', () => {
    expect(() => changeEntry(THREE, 'entry-9', {})).toThrow('the class has no entry entry-9');
    expect(() => moveEntry(BLANK, 'entry-1', 0)).toThrow('the class has no entry entry-1');
    expect(() => removeEntry(THREE, 'entry-9')).toThrow('the class has no entry entry-9');
    expect(() => orderEntries(THREE, ['entry-1', 'entry-1', 'entry-2'])).toThrow('no order of 3 entries');
    expect(() => addEntries(THREE, names(MOST_ENTRIES))).toThrow('503 entries; a class has at most 500');
  });
});

describe('a file', () => {
  const course = startClass(changeEntry(DRAWN, 'entry-3', { scratched: true, late: 90 }), 34_200);

  test('keeps the list, its draw, the start and lateness', () => {
    const read = readCourse(writeCourse(course));
    expect(read.kind === 'read' && read.course.class).toEqual(course.class);
    expect(read.kind === 'read' && writeCourse(read.course)).toBe(writeCourse(course));
  });

  test('with two entries of one id is refused', () => {
    const twice = writeCourse(course).replace('"entry-3"', '"entry-2"');
    const read = readCourse(twice);
    expect(read).toMatchObject({ kind: 'refused' });
    expect(read.kind === 'refused' && read.why).toContain('An entry of the class has the id "entry-2" twice');
  });
});
