import { expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import {
  MOST_UNDOS,
  newHistory,
  presentCourse,
  redo,
  undo,
  withRecalled,
  withStep,
} from '../../../src/core/course/history.ts';

const [a, b, c] = ['a', 'b', 'c'].map((title) => blankCourse({ title }));
if (!a || !b || !c) throw new Error('three courses');

test('undo gives the same object back, and redo too', () => {
  const history = withStep(withStep(newHistory(a), b, 'Move'), c, 'Turn');
  expect(presentCourse(history)).toBe(c);
  expect(presentCourse(undo(history))).toBe(b);
  expect(presentCourse(undo(undo(history)))).toBe(a);
  expect(presentCourse(redo(undo(history)))).toBe(c);
});

test('undo at the beginning and redo at the end change nothing', () => {
  const history = withStep(newHistory(a), b, 'Move');
  expect(redo(history)).toBe(history);
  expect(undo(undo(history))).toEqual(undo(history));
});

test('a step after an undo takes the place of what was undone', () => {
  const history = withStep(undo(withStep(newHistory(a), b, 'Move')), c, 'Turn');
  expect(history.steps.map((step) => step.label)).toEqual(['Open', 'Turn']);
  expect(presentCourse(history)).toBe(c);
  expect(redo(history)).toBe(history);
});

test('a step to the same course is no step', () => {
  const history = newHistory(a);
  expect(withStep(history, a, 'Nothing')).toBe(history);
});

test('the oldest steps go first, and the rest is undone one by one', () => {
  const courses = Array.from({ length: MOST_UNDOS + 5 }, (_, i) => blankCourse({ title: `${i}` }));
  let history = newHistory(a);
  for (const course of courses) history = withStep(history, course, course.title);
  expect(history.steps.length).toBe(MOST_UNDOS + 1);
  for (let i = courses.length - 1; i >= 4; i -= 1) {
    expect(presentCourse(history)).toBe(courses[i]);
    history = undo(history);
  }
  expect(undo(history)).toBe(history);
});

const step = (course: typeof a, label: string) => ({ course, label });

test('steps that are read later lie around the course that was opened', () => {
  const recalled = { course: b, label: 'Move', before: [step(a, 'Open')], after: [step(c, 'Turn')] };
  const history = withRecalled(newHistory(b), recalled);
  expect(history.steps.map(({ label }) => label)).toEqual(['Open', 'Move', 'Turn']);
  expect(presentCourse(history)).toBe(b);
  expect(presentCourse(undo(history))).toBe(a);
  expect(presentCourse(redo(history))).toBe(c);
});

test('what was done before they were read stays, in place of the steps after', () => {
  const d = blankCourse({ title: 'd' });
  const begun = withStep(newHistory(b), d, 'Mirror');
  const history = withRecalled(begun, { course: b, before: [step(a, 'Open')], after: [step(c, 'Turn')] });
  expect(history.steps.map(({ course }) => course.title)).toEqual(['a', 'b', 'd']);
  expect(presentCourse(history)).toBe(d);
  expect(presentCourse(withRecalled(undo(begun), { course: b, before: [step(a, 'Open')], after: [] }))).toBe(b);
});

test('steps around another course are none of this history', () => {
  const history = newHistory(a);
  expect(withRecalled(history, { course: b, before: [step(c, 'Open')], after: [] })).toBe(history);
});
