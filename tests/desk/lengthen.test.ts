import { expect, test } from 'vitest';
import { presentCourse, withRecalled } from '../../src/core/course/history.ts';
import { createDesk } from '../../src/desk/editor.ts';
import { threeObstacles } from './three-obstacles.ts';

/** The course before the present one: the same with a note. */
function recalled(desk: ReturnType<typeof createDesk>) {
  const course = presentCourse(desk.state().history);
  return withRecalled(desk.state().history, {
    course,
    label: 'Erase the note',
    before: [{ course: { ...course, notes: 'Rake first' }, label: 'Open' }],
    after: [],
  });
}

test('a longer history changes nothing that is seen, and undo leads into it', () => {
  const desk = createDesk(threeObstacles());
  const { course, chosen, said } = desk.state();
  desk.lengthen(recalled(desk));
  expect(desk.state()).toMatchObject({ chosen, said });
  expect(desk.state().course).toBe(course);
  desk.undo();
  expect(desk.state()).toMatchObject({ said: 'Undid: Erase the note', course: { notes: 'Rake first' } });
  desk.redo();
  expect(desk.state().course).toBe(course);
});

test('a history of another present course is refused', () => {
  const desk = createDesk(threeObstacles());
  const longer = recalled(desk);
  desk.edit('Note', (course) => ({ ...course, notes: 'Drag at noon' }));
  expect(() => desk.lengthen(longer)).toThrow(/another present course/);
});
