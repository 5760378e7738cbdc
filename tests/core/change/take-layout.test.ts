import { expect, test } from 'vitest';
import { takeLayout } from '../../../src/core/change/take-layout.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout, LONGEST_NAME } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { renameLayout } from '../../../src/core/course/layouts.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { pose } from '../../../src/core/plane/pose.ts';

function withBuilt(course: Course, { kind, x, values = {} }: { kind: string; x: number; values?: Values }): Course {
  const obstacle = buildObstacle(`${kind}-1`, kind, values, pose(x, 10));
  if ('why' in obstacle) throw new Error(obstacle.why);
  return addObstacle(course, obstacle);
}

const HERE = withBuilt(blankCourse({ unit: 'm' }), { kind: 'gate', x: 12 });
const SAME_ARENA = { ...blankCourse({ unit: 'm' }), arena: HERE.arena };

test('a layout that is taken is added last, shown, lies as it lay, and leaves the rest as it was', () => {
  const other = renameLayout(withBuilt(SAME_ARENA, { kind: 'fan', x: 20 }), 'layout-1', 'Open');
  const { course, says } = takeLayout(HERE, other, 'layout-1');
  expect(says).toEqual([]);
  expect(course).toMatchObject({ current: 'layout-2', class: HERE.class, truck: HERE.truck });
  expect(course.layouts.map(({ title }) => title)).toEqual(['Layout 1', 'Open']);
  expect(course.layouts[0]).toBe(HERE.layouts[0]);
  expect(currentLayout(course).obstacles).toBe(currentLayout(other).obstacles);
});

test('a name that is taken is told', () => {
  const { course, says } = takeLayout(HERE, SAME_ARENA, 'layout-1');
  expect(currentLayout(course).title).toBe('Layout 1 (2)');
  expect(says).toEqual(['Its name was taken, so it is called “Layout 1 (2)”.']);
  const long = 'é'.repeat(LONGEST_NAME);
  const twice = takeLayout(
    renameLayout(HERE, 'layout-1', long),
    renameLayout(SAME_ARENA, 'layout-1', long),
    'layout-1',
  );
  expect(currentLayout(twice.course).title).toBe(`${'é'.repeat(LONGEST_NAME - 4)} (2)`);
});

test('an arena of another size is told with both, and what lies beyond its walls', () => {
  const arena = { ...HERE.arena, length: 90, width: 40 };
  const other = renameLayout(withBuilt({ ...SAME_ARENA, arena }, { kind: 'fan', x: 80 }), 'layout-1', 'Open');
  expect(takeLayout(HERE, other, 'layout-1').says).toEqual([
    'It was laid out in an arena of 90.00 m by 40.00 m; this one is 60.00 m by 20.00 m. ' +
      'It lies as it lay there, measured from the west and the south wall.',
    'Beyond the walls of this arena: Fan, number 1.',
  ]);
});

test('what the truck does not have is told: too few of a line, and what is on no line', () => {
  const [first] = HERE.truck;
  if (first === undefined) throw new Error('the truck has poles');
  const here = { ...HERE, truck: [{ ...first, count: 2 }] };
  const other = renameLayout(
    withBuilt(withBuilt(SAME_ARENA, { kind: 'fan', x: 20 }), { kind: 'gate', x: 40 }),
    'layout-1',
    'Open',
  );
  const fan = currentLayout(other).obstacles.find(({ kind }) => kind === 'fan');
  expect(takeLayout(here, other, 'layout-1').says).toEqual([
    `The truck has 2 of ${first.title}; this layout uses ${fan?.pieces.length}.`,
    'The truck has nothing of the kind and size of 1 × Gate.',
  ]);
  expect(takeLayout({ ...here, truck: [] }, other, 'layout-1').says).toEqual([]);
});

test('another horse is told', () => {
  const other = { ...renameLayout(SAME_ARENA, 'layout-1', 'Open'), horse: 'pony' };
  const [says] = takeLayout(HERE, other, 'layout-1').says;
  expect(says).toMatch(/^It was made for .*[Pp]ony.*; here it is ridden by /);
});

test('a layout that the other course does not have is a mistake of the program', () => {
  expect(() => takeLayout(HERE, SAME_ARENA, 'layout-9')).toThrow('no layout layout-9');
});
