import { describe, expect, test } from 'vitest';
import type { Course } from '../../../src/core/course/course.ts';
import {
  addBreak,
  addClass,
  changeBreak,
  changeClass,
  changeDay,
  moveClass,
  orderClasses,
  removeBreak,
  removeClass,
  removeDay,
} from '../../../src/core/course/edit-day.ts';
import { branchLayout, eraseLayout } from '../../../src/core/course/layouts.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { sampleCourse } from './sample.ts';

const TWO = branchLayout(sampleCourse(), { title: 'Later' });
const THREE = ['layout-1', 'layout-2', 'layout-1'].reduce(
  (course, layout, i) => addClass(course, { layout, title: `Class ${i + 1}`, entries: 10 }),
  TWO,
);
const order = (course: Course) => course.day?.classes.map(({ title }) => title);

describe('the day', () => {
  test('begins with its first class, taken from the class of the course', () => {
    const { day } = addClass(sampleCourse(), { layout: 'layout-1' });
    expect(day).toEqual({
      starts: 28800,
      classes: [{ id: 'class-1', layout: 'layout-1', title: 'Class', level: 'open', entries: 0 }],
      breaks: [],
    });
    expect(() => addClass(sampleCourse(), { layout: 'gone' })).toThrow('the course has no layout gone');
  });

  test('has its classes in running order', () => {
    expect(order(moveClass(THREE, 'class-3', 0))).toEqual(['Class 3', 'Class 1', 'Class 2']);
    expect(order(moveClass(THREE, 'class-1', 99))).toEqual(['Class 2', 'Class 3', 'Class 1']);
    expect(moveClass(THREE, 'class-2', 1)).toBe(THREE);
    expect(order(orderClasses(THREE, ['class-2', 'class-3', 'class-1']))).toEqual(['Class 2', 'Class 3', 'Class 1']);
    expect(orderClasses(THREE, ['class-1', 'class-2', 'class-3'])).toBe(THREE);
    expect(() => orderClasses(THREE, ['class-1', 'class-1', 'class-2'])).toThrow('is no order of 3 classes');
    expect(order(removeClass(THREE, 'class-2'))).toEqual(['Class 1', 'Class 3']);
  });

  test('keeps what is fixed about a class, and lets it go again', () => {
    const fixed = changeClass(THREE, 'class-2', { judge: 'A', startsAt: 36000, riders: ['12', '31'] });
    expect(fixed.day?.classes[1]).toMatchObject({ judge: 'A', startsAt: 36000, riders: ['12', '31'] });
    expect(fixed.day?.classes[0]).toBe(THREE.day?.classes[0]);
    const free = changeClass(fixed, 'class-2', { judge: undefined, startsAt: undefined, riders: undefined });
    expect(free).toEqual(THREE);
    expect(() => changeClass(THREE, 'class-2', { layout: 'gone' })).toThrow('the course has no layout gone');
    expect(() => changeClass(THREE, 'class-9', {})).toThrow('the day has no class class-9');
  });

  test('has its breaks in the order of their times', () => {
    const two = addBreak(addBreak(THREE), { title: 'Morning', from: 36000, length: 900 });
    expect(two.day?.breaks.map(({ title }) => title)).toEqual(['Morning', 'Break']);
    const later = changeBreak(two, 'break-2', { from: 50000 });
    expect(later.day?.breaks.map(({ id }) => id)).toEqual(['break-1', 'break-2']);
    expect(removeBreak(later, 'break-1').day?.breaks).toHaveLength(1);
    expect(changeDay(two, { starts: 30000, restBetween: 600 }).day).toMatchObject({ starts: 30000, restBetween: 600 });
    expect(changeDay(changeDay(two, { restBetween: 600 }), { restBetween: undefined })).toEqual(two);
    expect(removeDay(two)).toEqual(TWO);
  });

  test('loses the classes of a layout with the layout', () => {
    expect(order(eraseLayout(THREE, 'layout-1'))).toEqual(['Class 2']);
    expect(eraseLayout(branchLayout(THREE), 'layout-3').day).toBe(THREE.day);
  });

  test('is written and read back', () => {
    const whole = addBreak(
      changeClass(changeDay(THREE, { restBetween: 900 }), 'class-1', { judge: 'A', riders: ['7'] }),
    );
    expect(readCourse(writeCourse(whole))).toEqual({ kind: 'read', course: whole, repairs: [] });
  });

  test('is refused when it names what is not there, or names a thing twice', () => {
    const spoiled = (change: (text: string) => string) => {
      const reading = readCourse(change(writeCourse(addBreak(THREE))));
      return reading.kind === 'refused' ? reading.why : '';
    };
    expect(spoiled((text) => text.replace('"layout": "layout-2"', '"layout": "layout-9"'))).toBe(
      'Class "class-2" of the day rides the layout "layout-9"; there are layout-1, layout-2.',
    );
    expect(spoiled((text) => text.replace('"id": "class-2"', '"id": "class-1"'))).toMatch(
      /A class of the day.*class-1/,
    );
    expect(spoiled((text) => text.replace('"starts": 28800', '"starts": "eight"'))).toMatch(/starts/);
  });
});
