import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LONGEST_NAME } from '../../../src/core/course/course.ts';
import { shiftByKeys } from '../../../src/core/course/edit-obstacles.ts';
import {
  addLayout,
  branchLayout,
  chooseLayout,
  eraseLayout,
  freeTitle,
  moveLayout,
  renameLayout,
} from '../../../src/core/course/layouts.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { sampleCourse } from './sample.ts';

const titles = (course: ReturnType<typeof sampleCourse>) => course.layouts.map(({ title }) => title);
const ids = (course: ReturnType<typeof sampleCourse>) => course.layouts.map(({ id }) => id);

test('a branch is shown, shares its obstacles, and is edited alone', () => {
  const before = sampleCourse();
  const branched = branchLayout(before, { title: 'Afternoon' });
  expect(branched.current).toBe('layout-2');
  expect(branched.layouts[1]?.title).toBe('Afternoon');
  expect(branched.layouts[1]?.obstacles).toBe(before.layouts[0].obstacles);
  expect(shiftByKeys(branched, ['fan-1'], 1, 0).layouts[0]).toBe(before.layouts[0]);
});

test('any layout is branched; the branch stands after it and is named for it', () => {
  const named = renameLayout(sampleCourse(), 'layout-1', 'Novice');
  const two = branchLayout(named, { title: 'Open' });
  const three = branchLayout(two, { of: 'layout-1' });
  expect(titles(three)).toEqual(['Novice', 'Novice, branch', 'Open']);
  expect(three.current).toBe('layout-3');
  const four = branchLayout(branchLayout(three, { of: 'layout-1' }), { of: 'layout-3' });
  expect(titles(four)).toEqual(['Novice', 'Novice, branch (2)', 'Novice, branch', 'Novice, branch (3)', 'Open']);
});

test('a branch of a layout with the longest name has a name that a file may have', () => {
  // A sign of two code units at each place: none is cut in two.
  for (const title of [
    'x'.repeat(LONGEST_NAME),
    '🐎'.repeat(LONGEST_NAME / 2),
    `x${'🐎'.repeat(LONGEST_NAME / 2 - 1)}`,
  ]) {
    const course = branchLayout(branchLayout(renameLayout(sampleCourse(), 'layout-1', title)), { of: 'layout-1' });
    expect(new Set(titles(course)).size).toBe(3);
    for (const each of titles(course)) {
      expect(each.length).toBeLessThanOrEqual(LONGEST_NAME);
      expect(each).not.toMatch(/\p{Surrogate}/u);
    }
    expect(readCourse(writeCourse(course))).toMatchObject({ kind: 'read', repairs: [] });
  }
});

test('a free title is the title itself, or the first number that is free', () => {
  const course = addLayout(sampleCourse(), { ...sampleCourse().layouts[0], title: 'Open' });
  expect(freeTitle(course, 'Novice')).toBe('Novice');
  expect(freeTitle(course, 'Open')).toBe('Open (2)');
  expect(freeTitle(renameLayout(course, 'layout-1', 'Open (2)'), 'Open')).toBe('Open (3)');
});

test('a layout is moved in the list, and its place is all that changes', () => {
  const three = branchLayout(branchLayout(sampleCourse()));
  expect(ids(moveLayout(three, 'layout-1', 2))).toEqual(['layout-2', 'layout-3', 'layout-1']);
  expect(ids(moveLayout(three, 'layout-3', 0))).toEqual(['layout-3', 'layout-1', 'layout-2']);
  expect(moveLayout(three, 'layout-2', 1)).toBe(three);
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 2 }), fc.integer({ min: -1, max: 4 }), (from, to) => {
      const layout = three.layouts[from];
      if (layout === undefined) throw new Error('there are three');
      const moved = moveLayout(three, layout.id, to);
      expect(moved.layouts.indexOf(layout)).toBe(Math.max(0, Math.min(2, to)));
      expect(moved.current).toBe(three.current);
      const others = (of: typeof three) => of.layouts.filter((each) => each !== layout);
      expect(others(moved)).toEqual(others(three));
      expect(moveLayout(moved, layout.id, from)).toEqual(three);
    }),
  );
});

test('erasing the shown layout shows its neighbour', () => {
  const three = branchLayout(branchLayout(sampleCourse()));
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
  expect(() => branchLayout(sampleCourse(), { of: 'layout-9' })).toThrow('no layout layout-9');
  expect(() => moveLayout(sampleCourse(), 'layout-9', 0)).toThrow('no layout layout-9');
});
