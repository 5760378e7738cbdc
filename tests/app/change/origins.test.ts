import { expect, test } from 'vitest';
import { becameOf, cameFrom, ghostPieces, moveWords, originOf, originsWords } from '../../../src/app/change/origins.ts';
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

test('of a layout that lies the same there is no ghost', () => {
  expect(ghostPieces(FROM, FROM)).toEqual([]);
  expect(ghostPieces(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 0.004, 0)))).toEqual([]);
});

test('the ghost has the pieces that lie elsewhere, and where they lay', () => {
  const moved = currentLayout(shiftByKeys(BEFORE, ['fan-1'], 3, 4));
  const fan = FROM.obstacles.find(({ id }) => id === 'fan-1');
  expect(ghostPieces(FROM, moved).map(({ key }) => key)).toEqual(fan?.pieces.map(({ id }) => `fan-1/${id}`));
  const gone = currentLayout(eraseByKeys(BEFORE, ['box-1']));
  expect(new Set(ghostPieces(FROM, gone).map(({ obstacle }) => obstacle))).toEqual(new Set(['box-1']));
});

test('one pole moved inside an obstacle is one ghost', () => {
  const moved = currentLayout(shiftByKeys(BEFORE, ['fan-1/pole-2'], 0, 1));
  expect(ghostPieces(FROM, moved).map(({ key }) => key)).toEqual(['fan-1/pole-2']);
  expect(originOf(FROM, moved, 'fan-1/pole-2')).toMatchObject({ kind: 'moved', by: expect.closeTo(1, 9) });
  expect(originOf(FROM, moved, 'fan-1/pole-1')).toEqual({ kind: 'same' });
});

test('the ghost is the same list while a thing is dragged further, and another one when more has moved', () => {
  const moved = shiftByKeys(BEFORE, ['fan-1'], 3, 4);
  const first = ghostPieces(FROM, currentLayout(moved));
  expect(first.length).toBeGreaterThan(0);
  expect(ghostPieces(FROM, currentLayout(shiftByKeys(moved, ['fan-1'], 0.1, 0)))).toBe(first);
  const more = ghostPieces(FROM, currentLayout(shiftByKeys(moved, ['box-1'], 1, 0)));
  expect(more.length).toBeGreaterThan(first.length);
});

test('an origin has both ends, the distance and the turn', () => {
  const moved = rotateByKeys(shiftByKeys(BEFORE, ['fan-1'], 3, 4), ['fan-1'], Math.PI / 6, { x: 23, y: 19 });
  const origin = originOf(FROM, currentLayout(moved), 'fan-1');
  if (origin?.kind !== 'moved') throw new Error('the fan was moved');
  expect(origin).toMatchObject({ from: { x: 20, y: 15 }, to: { x: 23, y: 19 } });
  expect(origin.by).toBeCloseTo(5, 9);
  expect(origin.turn).toBeCloseTo(Math.PI / 6, 9);
  expect(moveWords(origin, { unit: 'm' })).toBe('5.00 m, turned 30°');
});

test('what one of the two does not have is new or gone, and another kind is another thing', () => {
  const without = currentLayout(eraseByKeys(BEFORE, ['box-1']));
  expect(originOf(FROM, without, 'box-1')).toEqual({ kind: 'gone' });
  expect(originOf(without, FROM, 'box-1')).toEqual({ kind: 'new' });
  expect(originOf(FROM, FROM, 'gate-7')).toBeUndefined();
  const other = currentLayout(withBuilt(eraseByKeys(BEFORE, ['box-1']), 'box-1', 'gate'));
  expect(originOf(FROM, other, 'box-1')).toEqual({ kind: 'new' });
});

test('the words name each layout that is compared', () => {
  const shown = currentLayout(shiftByKeys(BEFORE, ['fan-1'], 3, 4));
  const others = [
    { ...FROM, title: 'Novice' },
    { ...shown, title: 'Open' },
    { ...FROM, title: 'Led', obstacles: [] },
  ];
  expect(originsWords('fan-1', { shown, others, unit: 'm' })).toBe('moved 5.00 m from Novice, as in Open, not in Led');
  expect(originsWords('fan-1', { shown, others: [], unit: 'm' })).toBe('');
});

test('of two layouts that were not branched from each other the nearest of a kind is the same thing', () => {
  const from = currentLayout(withBuilt(blankCourse(), 'fan-1', 'fan'));
  const shown = currentLayout(shiftByKeys(withBuilt(blankCourse(), 'spring-fan', 'fan'), ['spring-fan'], 2, 0));
  expect(originOf(from, shown, 'spring-fan')).toMatchObject({ kind: 'moved', by: 2 });
  expect(becameOf(from, shown, 'fan-1')).toBe('spring-fan');
  expect(becameOf(from, currentLayout(blankCourse()), 'fan-1')).toBeUndefined();
  expect(cameFrom(from, shown, 'spring-fan/pole-1')).toBe('fan-1');
  expect(cameFrom(from, currentLayout(blankCourse()), 'fan-1')).toBe('fan-1');
  expect(cameFrom(currentLayout(blankCourse()), shown, 'spring-fan')).toBeUndefined();
});

test('what stands where it stood and was built otherwise says so', () => {
  const rebuilt = rebuildObstacle(BEFORE, 'fan-1', { poles: 4 });
  if ('why' in rebuilt) throw new Error(rebuilt.why);
  const shown = currentLayout(rebuilt);
  expect(originOf(FROM, shown, 'fan-1')).toEqual({ kind: 'rebuilt' });
  expect(originsWords('fan-1', { shown, others: [{ ...FROM, title: 'Novice' }], unit: 'm' })).toBe(
    'built differently in Novice',
  );
});
