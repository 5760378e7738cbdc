import { describe, expect, test } from 'vitest';
import { companionFragment, readFragment } from '../../../src/app/setout/companion-door.ts';
import { drawingPrint, partPrint } from '../../../src/app/setout/drawing-print.ts';
import { findDrawing } from '../../../src/app/setout/find-drawing.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { setCrew } from '../../../src/core/course/edit-crew.ts';
import { branchLayout } from '../../../src/core/course/layouts.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { setOutOf } from '../../../src/core/setout/plan-setout.ts';
import { survey } from '../../../src/core/survey.ts';
import { STARTERS } from '../../core/ride/courses.ts';

const [[, course]] = STARTERS as [(typeof STARTERS)[0]];

function moved(by: number): Course {
  const [first, ...layouts] = course.layouts;
  const [obstacle, ...others] = first.obstacles;
  if (obstacle === undefined) throw new Error('the starter is empty');
  const pose = { ...obstacle.pose, x: obstacle.pose.x + by };
  return { ...course, layouts: [{ ...first, obstacles: [{ ...obstacle, pose }, ...others] }, ...layouts] };
}

describe('a link to parts of a set-out', () => {
  test.each([
    { drawing: 'k3j9x', obstacles: [] },
    { drawing: 'k3j9x', obstacles: ['fan-1'] },
    { drawing: '0', obstacles: ['fan-1', 'own thing.2+3'] },
  ])('is read as it was written: $obstacles', (link) => {
    expect(readFragment(companionFragment(link))).toEqual(link);
  });

  test.each(['', '#', '#stage', '#set-out=', '#set-out=A B', '#set-out=abc.%E0%A4%A'])(
    '%s opens nothing',
    (fragment) => {
      expect(readFragment(fragment)).toBeNull();
    },
  );
});

describe('the print of a drawing', () => {
  test('is the same after the course was written to a file and read', () => {
    for (const [name, each] of STARTERS) {
      const read = readCourse(writeCourse(each));
      expect(read.kind === 'read' && drawingPrint(read.course), name).toBe(drawingPrint(each));
    }
  });

  test('is another when a thing lies a millimetre elsewhere, and the same with another crew or title', () => {
    expect(drawingPrint(moved(0.001))).not.toBe(drawingPrint(course));
    expect(drawingPrint(setCrew({ ...course, title: 'Another' }, { people: 1 }))).toBe(drawingPrint(course));
  });
});

test('the print of a part is another when its readings are', () => {
  const here = setOutOf(survey(course)).parts;
  const there = setOutOf(survey(moved(0.5))).parts;
  const changed = here.filter((part, i) => partPrint(part) !== partPrint(there[i] as typeof part));
  expect(changed.length).toBeGreaterThan(0);
  expect(changed.length).toBeLessThan(here.length);
});

describe('the drawing of a link', () => {
  const link = { drawing: drawingPrint(course) };
  const none = { slot: () => 'own', courses: () => Promise.resolve([]), read: () => Promise.reject(new Error('none')) };

  test('is found in the open course, also where another layout is shown', async () => {
    expect(await findDrawing(link, course, none)).toEqual({ kind: 'open', course });
    const branched = branchLayout(course);
    const changed = { ...moved(1), layouts: [...moved(1).layouts, ...course.layouts.slice(1)] } as Course;
    expect(await findDrawing(link, branched, none)).toMatchObject({
      kind: 'open',
      course: { current: branched.current },
    });
    expect(await findDrawing(link, changed, none)).toEqual({ kind: 'missing' });
  });

  test('is found among the courses that the browser keeps, and not in the slot of the open one', async () => {
    const kept = {
      slot: () => 'own',
      courses: () => Promise.resolve(['own', 'bad', 'other'].map((slot) => ({ slot, title: slot, saved: 0 }))),
      read: (slot: string) =>
        Promise.resolve(slot === 'bad' ? ({ kind: 'refused', why: '' } as const) : ({ kind: 'read', course } as never)),
    };
    expect(await findDrawing(link, moved(1), kept)).toEqual({ kind: 'kept', slot: 'other', title: 'other' });
  });
});
