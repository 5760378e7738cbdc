import { expect, test } from 'vitest';
import { shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import { chooseLayout, copyLayout, eraseLayout, renameLayout } from '../../../src/core/course/layouts.ts';
import { sampleCourse } from './sample.ts';

test('a copy is shown, shares its obstacles, and is edited alone', () => {
  const before = sampleCourse();
  const copied = copyLayout(before, 'Afternoon');
  expect(copied.current).toBe('layout-2');
  expect(copied.layouts[1]?.title).toBe('Afternoon');
  expect(copied.layouts[1]?.obstacles).toBe(before.layouts[0].obstacles);
  expect(shiftByKeys(copied, ['fan-1'], 1, 0).layouts[0]).toBe(before.layouts[0]);
});

test('erasing the shown layout shows its neighbour', () => {
  const three = copyLayout(copyLayout(sampleCourse()));
  const after = eraseLayout(three, 'layout-3');
  expect(after.layouts.map((layout) => layout.id)).toEqual(['layout-1', 'layout-2']);
  expect(after.current).toBe('layout-2');
  expect(eraseLayout(three, 'layout-1').current).toBe('layout-3');
  expect(eraseLayout(chooseLayout(three, 'layout-1'), 'layout-1').current).toBe('layout-2');
});

test('the last layout stays', () => {
  const before = sampleCourse();
  expect(eraseLayout(before, 'layout-1')).toBe(before);
});

test('choosing and renaming what is so already change nothing', () => {
  const before = sampleCourse();
  expect(chooseLayout(before, 'layout-1')).toBe(before);
  expect(renameLayout(before, 'layout-1', 'Layout 1')).toBe(before);
  expect(renameLayout(before, 'layout-1', 'Morning').layouts[0].title).toBe('Morning');
});

test('a layout that is not there is a mistake of the program', () => {
  expect(() => chooseLayout(sampleCourse(), 'layout-9')).toThrow('no layout layout-9');
});
