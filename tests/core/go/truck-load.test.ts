import { describe, expect, test } from 'vitest';
import type { Course, Layout } from '../../../src/core/course/course.ts';
import { dayLayouts, truckLoad } from '../../../src/core/go/truck-load.ts';
import { feet, inches } from '../../../src/core/measure/quantity.ts';
import { survey } from '../../../src/core/survey.ts';
import { DAY } from '../change/larkhollow-day.ts';
import { STARTERS } from '../ride/courses.ts';
import { courseOf } from '../setout/sample-plans.ts';

const RUN = (poles: number) =>
  courseOf([{ kind: 'run', values: { poles, gap: feet(3), length: feet(12), gait: 'jog' }, at: [60, 40, 0] }]);

/** Two layouts, of four and of six poles of 12 ft, on a truck with so many. */
function twoRuns(count: number): Course {
  const [four, six] = [RUN(4), RUN(6)];
  const layout = (of: Course, id: string): Layout => ({ ...of.layouts[0], id, title: id });
  return {
    ...four,
    truck: [{ id: 'poles', title: 'Poles, 12 ft', kind: 'pole', values: { length: feet(12) }, count }],
    layouts: [layout(four, 'four'), layout(six, 'six')],
    current: 'four',
  };
}

describe('what the truck is loaded with', () => {
  test('is the most that lies in any of the layouts, since what lies is used again, and one spare for ten', () => {
    expect(truckLoad(twoRuns(20), ['four', 'six']).things).toEqual([
      { title: 'Poles, 12 ft', sizes: '', uses: [4, 6], most: 6, spare: 1, spareWanted: 1, there: 20, missing: 0 },
    ]);
    expect(truckLoad(twoRuns(20), ['four']).things[0]).toMatchObject({ uses: [4], most: 4, spare: 1 });
  });

  test('has no spare where there is none, and tells what is missing', () => {
    expect(truckLoad(twoRuns(6), ['six']).things[0]).toMatchObject({ most: 6, spare: 0, missing: 0 });
    expect(truckLoad(twoRuns(5), ['six']).things[0]).toMatchObject({ most: 6, spare: 0, missing: 1 });
  });

  test('names what no line of the list provides by its kind and size', () => {
    const strange: Course = {
      ...twoRuns(20),
      truck: [{ id: 'gate', title: 'Gate', kind: 'gate', values: {}, count: 1 }],
    };
    const { things, unused } = truckLoad(strange, ['four']);
    expect(things).toMatchObject([{ title: "12' pole", most: 4, there: 0, missing: 4, spare: 0 }]);
    expect(unused).toEqual(['Gate']);
  });

  test('misses nothing where there is no truck list', () => {
    expect(truckLoad({ ...twoRuns(1), truck: [] }, ['four']).things).toMatchObject([
      { there: null, missing: 0, spare: 1 },
    ]);
  });

  test('tells the lengths apart on a line that has any length', () => {
    const mixed = courseOf([
      { kind: 'run', values: { poles: 4, gap: feet(3), length: feet(12), gait: 'jog' }, at: [60, 40, 0] },
      { kind: 'run', values: { poles: 2, gap: feet(3), length: feet(8), gait: 'jog' }, at: [120, 40, 0] },
    ]);
    const course: Course = { ...mixed, truck: [{ id: 'poles', title: 'Poles', kind: 'pole', values: {}, count: 9 }] };
    expect(truckLoad(course, [course.current]).things[0]?.sizes).toBe("4 × 12' pole; 2 × 8' pole");
  });

  test('has a cup under each raised end, by height', () => {
    const raised = courseOf([{ kind: 'raised-run', values: { poles: 3 }, at: [60, 40, 0] }]);
    const ends = raised.layouts[0].obstacles.flatMap(({ pieces }) =>
      pieces.flatMap(({ values }) =>
        [values.raisedStart, values.raisedEnd].filter((each) => typeof each === 'number' && each > 0),
      ),
    );
    const { risers } = truckLoad(raised, [raised.current]);
    expect(ends.length).toBeGreaterThan(0);
    expect(risers.reduce((sum, { most }) => sum + most, 0)).toBe(ends.length);
    const [height] = new Set(ends);
    expect(risers[0]?.title).toBe(`Cups or risers, ${Math.round(Number(height) / inches(1))}" high`);
  });
});

test.each(STARTERS)('of %s every piece is counted once', (_, course) => {
  const { pieces } = survey(course);
  const { things } = truckLoad(course, [course.current]);
  expect(things.reduce((sum, { most }) => sum + most, 0)).toBe(pieces.length);
});

test('the layouts of a day are those that its classes ride', () => {
  expect([...dayLayouts(DAY)].sort()).toEqual([...new Set(DAY.day?.classes.map(({ layout }) => layout))].sort());
  const [, alone = DAY] = STARTERS.find(([, course]) => course.day === undefined) ?? [];
  expect(dayLayouts(alone)).toEqual([alone.current]);
});
