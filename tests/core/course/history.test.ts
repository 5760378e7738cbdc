import { expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { advanced, begun, presentCourse, redone, undone } from '../../../src/core/course/history.ts';

const [a, b, c] = ['a', 'b', 'c'].map((title) => blankCourse({ title }));
if (!a || !b || !c) throw new Error('three courses');

test('undo gives the same object back, and redo too', () => {
  const history = advanced(advanced(begun(a), b, 'Move'), c, 'Turn');
  expect(presentCourse(history)).toBe(c);
  expect(presentCourse(undone(history))).toBe(b);
  expect(presentCourse(undone(undone(history)))).toBe(a);
  expect(presentCourse(redone(undone(history)))).toBe(c);
});

test('undo at the beginning and redo at the end change nothing', () => {
  const history = advanced(begun(a), b, 'Move');
  expect(redone(history)).toBe(history);
  expect(undone(undone(history))).toEqual(undone(history));
});

test('a step after an undo takes the place of what was undone', () => {
  const history = advanced(undone(advanced(begun(a), b, 'Move')), c, 'Turn');
  expect(history.steps.map((step) => step.label)).toEqual(['Open', 'Turn']);
  expect(presentCourse(history)).toBe(c);
  expect(redone(history)).toBe(history);
});

test('a step to the same course is no step', () => {
  const history = begun(a);
  expect(advanced(history, a, 'Nothing')).toBe(history);
});
