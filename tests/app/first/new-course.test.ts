import { describe, expect, test } from 'vitest';
import {
  emptyForm,
  formIn,
  LATER,
  newCourse,
  POLE_LENGTHS,
  USUAL_SIZES,
  usualPoles,
} from '../../../src/app/first/new-course.ts';
import { RULEBOOKS } from '../../../src/core/checks/rulebooks/rulebooks.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';

const OPEN = blankCourse();
const ANSWERED = { ...emptyForm('ft'), book: LATER };

function refusalsOf(form: typeof ANSWERED) {
  const answer = newCourse(form, OPEN);
  if (!('refusals' in answer)) throw new Error('the form was taken');
  return answer.refusals;
}

function courseOf(form: typeof ANSWERED) {
  const answer = newCourse(form, OPEN);
  if (!('course' in answer)) throw new Error(JSON.stringify(answer.refusals));
  return answer.course;
}

describe('the form for a new course', () => {
  test('asks for the rule book and assumes none', () => {
    expect(refusalsOf(emptyForm('ft'))).toEqual({ book: expect.stringContaining('Decide later'), poles: {} });
  });

  test.each([LATER, ...RULEBOOKS.map(({ id }) => id)])(
    'makes a course judged by %s that can be saved and read',
    (book) => {
      const course = courseOf({ ...ANSWERED, book });
      const reading = readCourse(writeCourse(course));
      expect(reading).toMatchObject({ kind: 'read', repairs: [], course: { rulebook: { id: book } } });
    },
  );

  test('takes lengths as people write them, in either unit', () => {
    const { arena } = courseOf({ ...ANSWERED, length: '50 m', width: `98' 6"`, wall: 'south', at: '20' });
    expect(arena.length).toBe(50);
    expect(arena.width).toBeCloseTo(98.5 * FOOT, 9);
    expect(arena.entrance).toMatchObject({ wall: 'south', at: expect.closeTo(20 * FOOT, 9) });
  });

  test('puts the way in into the middle of its wall while nobody says where', () => {
    expect(courseOf(ANSWERED).arena.entrance.at).toBeCloseTo(50 * FOOT, 9);
    expect(courseOf({ ...ANSWERED, wall: 'north' }).arena.entrance.at).toBeCloseTo(100 * FOOT, 9);
  });

  test('refuses field by field, each with what would be right', () => {
    const refusals = refusalsOf({ ...ANSWERED, length: 'long', width: '2 m', poles: ['3', 'some', '-1'], book: '' });
    expect(refusals.length).toMatch(/long|Write/);
    expect(refusals.width).toContain('between');
    expect(Object.keys(refusals.poles)).toEqual(['1', '2']);
    expect(refusals.book).toContain('Decide later');
    expect(refusals.at).toBeUndefined();
  });

  test('refuses a way in that does not lie in its wall', () => {
    expect(refusalsOf({ ...ANSWERED, at: '97 ft' }).at).toContain(`94'`);
    expect(refusalsOf({ ...ANSWERED, width: '3 m', length: '3 m', at: '' }).at).toContain(`12'`);
  });

  test('loads the truck by pole length and count, leaves out what there is none of', () => {
    const { truck } = courseOf({ ...ANSWERED, load: 'home', poles: ['0', '7', '5'] });
    expect(truck.map(({ title, count }) => `${count} ${title}`)).toEqual([
      '7 Poles, 10 ft',
      '5 Poles, 8 ft',
      '6 Markers',
      '2 Barrels',
    ]);
    expect(courseOf(ANSWERED).truck).toEqual(blankCourse().truck);
    expect(courseOf({ ...ANSWERED, load: 'none' }).truck).toEqual([]);
    expect(courseOf({ ...ANSWERED, load: 'open' }).truck).toBe(OPEN.truck);
  });

  test('counts of a load that has none of its own are not read', () => {
    expect(courseOf({ ...ANSWERED, load: 'none', poles: ['x', 'y', 'z'] }).truck).toEqual([]);
    expect(usualPoles('home')).toHaveLength(POLE_LENGTHS.length);
  });

  test('goes from feet to metres: a usual size becomes one, another is written anew', () => {
    const metric = formIn(emptyForm('ft'), 'm');
    expect(metric).toMatchObject({ unit: 'm', length: '60.00 m', width: '20.00 m' });
    expect(formIn({ ...ANSWERED, length: '120 ft', at: '10' }, 'm')).toMatchObject({ length: '36.58 m', at: '3.05 m' });
    for (const unit of ['ft', 'm'] as const) expect(USUAL_SIZES[unit].length).toBeGreaterThan(2);
  });
});
