import { expect, test } from 'vitest';
import { layoutDifferences, piecesTouched } from '../../../src/app/change/differences.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import {
  addObstacle,
  eraseByKeys,
  rebuildObstacle,
  rotateByKeys,
  shiftByKeys,
} from '../../../src/core/course/edit-obstacles.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { pose } from '../../../src/core/plane/pose.ts';

function withBuilt(course: Course, id: string, kind: string): Course {
  const obstacle = buildObstacle(id, kind, {}, pose(20, 15));
  if ('why' in obstacle) throw new Error(obstacle.why);
  return addObstacle(course, obstacle);
}

const BEFORE = withBuilt(withBuilt(blankCourse(), 'fan-1', 'fan'), 'box-1', 'box');
const FROM = currentLayout(BEFORE);

test('a layout differs from itself in nothing', () => {
  expect(layoutDifferences(FROM, FROM)).toEqual([]);
});

test('a moved obstacle is told with its way and its turn', () => {
  const [only, more] = layoutDifferences(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 3, 4)));
  expect(more).toBeUndefined();
  expect(only).toMatchObject({ kind: 'moved', by: 5, turn: 0 });
  const spun = currentLayout(rotateByKeys(BEFORE, ['fan-1'], Math.PI / 2, { x: 20, y: 15 }));
  const [turn] = layoutDifferences(FROM, spun);
  expect(turn?.kind === 'moved' && turn.turn).toBeCloseTo(Math.PI / 2, 9);
});

test('less than a crew can see is no difference', () => {
  expect(layoutDifferences(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 0.004, 0)))).toEqual([]);
});

test('what is gone, new and rebuilt is told as such, and its pieces are counted', () => {
  const other = rebuildObstacle(eraseByKeys(withBuilt(BEFORE, 'gate-1', 'gate'), ['box-1']), 'fan-1', { poles: 4 });
  if ('why' in other) throw new Error(other.why);
  const list = layoutDifferences(FROM, currentLayout(other));
  expect(list.map((each) => `${each.kind} ${each.obstacle.id}`)).toEqual(['gone box-1', 'rebuilt fan-1', 'new gate-1']);
  const box = FROM.obstacles.find((each) => each.id === 'box-1');
  expect(piecesTouched(list)).toBe((box?.pieces.length ?? 0) + 4 + 1);
});
