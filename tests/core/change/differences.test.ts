import { expect, test } from 'vitest';
import { layoutDifferences, piecesTouched } from '../../../src/core/change/differences.ts';
import { goDifferences } from '../../../src/core/change/go-differences.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import {
  addObstacle,
  eraseByKeys,
  flipObstacles,
  rebuildObstacle,
  rotateByKeys,
  shiftByKeys,
} from '../../../src/core/course/edit-obstacles.ts';
import { addLeg, changeLeg, removeLeg, reorderLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { inches } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { pose, toLocal } from '../../../src/core/plane/pose.ts';

function withBuilt(course: Course, id: string, kind: string, at = pose(20, 15)): Course {
  const obstacle = buildObstacle(id, kind, {}, at);
  if ('why' in obstacle) throw new Error(obstacle.why);
  return addObstacle(course, obstacle);
}

function rebuilt(course: Course, id: string, values: Record<string, number | string>): Course {
  const made = rebuildObstacle(course, id, values);
  if ('why' in made) throw new Error(made.why);
  return made;
}

const BEFORE = withBuilt(withBuilt(withBuilt(blankCourse(), 'fan-1', 'fan'), 'box-1', 'box'), 'run-1', 'run');
const FROM = currentLayout(BEFORE);

test('a layout differs from itself in nothing, and so does a copy', () => {
  const copy = JSON.parse(JSON.stringify(FROM));
  for (const to of [FROM, copy]) {
    expect(layoutDifferences(FROM, to)).toEqual([]);
    expect(goDifferences(FROM, to)).toEqual([]);
  }
});

test('a moved obstacle is told with where from, where to, its way and its turn', () => {
  const [only, more] = layoutDifferences(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 3, 4)));
  expect(more).toBeUndefined();
  expect(only).toMatchObject({ kind: 'moved', by: 5, turn: 0, from: { x: 20, y: 15 }, to: { x: 23, y: 19 } });
  const spun = currentLayout(rotateByKeys(BEFORE, ['fan-1'], Math.PI / 2, { x: 20, y: 15 }));
  const [turn] = layoutDifferences(FROM, spun);
  expect(turn?.kind === 'moved' && turn.turn).toBeCloseTo(Math.PI / 2, 9);
});

test('less than a crew can see is no difference', () => {
  expect(layoutDifferences(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 0.004, 0)))).toEqual([]);
  expect(layoutDifferences(FROM, currentLayout(shiftByKeys(BEFORE, ['fan-1'], 0.02, 0)))).toHaveLength(1);
});

test('another frame with the pieces where they lay is no difference', () => {
  const frame = pose(22, 14, 0.3);
  const other = replaceLayout(BEFORE, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each) => ({
      ...each,
      pose: frame,
      pieces: each.pieces.map((piece) => ({
        ...piece,
        pose: toLocal(frame, {
          x: each.pose.x + piece.pose.x,
          y: each.pose.y + piece.pose.y,
          angle: piece.pose.angle,
        }),
      })),
    })),
  }));
  expect(layoutDifferences(FROM, currentLayout(other))).toEqual([]);
});

test('what went, came and was rebuilt is told as such, and its pieces are counted', () => {
  const other = rebuilt(eraseByKeys(withBuilt(BEFORE, 'gate-1', 'gate'), ['box-1']), 'fan-1', { poles: 4 });
  const list = layoutDifferences(FROM, currentLayout(other));
  expect(list.map((each) => `${each.kind} ${each.obstacle.id}`)).toEqual([
    'went box-1',
    'rebuilt fan-1',
    'came gate-1',
  ]);
  const box = FROM.obstacles.find((each) => each.id === 'box-1');
  const fan = list.find(({ kind }) => kind === 'rebuilt');
  if (fan?.kind !== 'rebuilt') throw new Error('the fan was rebuilt');
  expect(fan.values).toContainEqual({ param: 'poles', from: 3, to: 4 });
  expect(fan.pieces.filter(({ kind }) => kind === 'came').map(({ piece }) => piece.id)).toEqual(['pole-4']);
  const ids = new Set(fan.pieces.map(({ piece }) => piece.id));
  expect(piecesTouched(list)).toBe((box?.pieces.length ?? 0) + 1 + ids.size);
});

test('a rebuilt obstacle says which values differ and which pieces lie otherwise', () => {
  const [only, more] = layoutDifferences(FROM, currentLayout(rebuilt(BEFORE, 'run-1', { gap: inches(40) })));
  expect(more).toBeUndefined();
  if (only?.kind !== 'rebuilt') throw new Error('the run was rebuilt');
  expect(only.values.map(({ param, to }) => [param, to])).toEqual([['gap', inches(40)]]);
  expect(only.pieces.length).toBeGreaterThan(1);
  expect(only.pieces.every((piece) => piece.kind === 'moved' && piece.by > 0.01)).toBe(true);
});

test('a mirrored obstacle is told as a mirror image', () => {
  const course = withBuilt(blankCourse(), 'back-l-1', 'back-l');
  const [only] = layoutDifferences(currentLayout(course), currentLayout(flipObstacles(course, ['back-l-1'])));
  expect(only).toMatchObject({ kind: 'rebuilt', mirrored: true, values: [] });
});

test('obstacles without a common id are paired by kind and place', () => {
  const a = withBuilt(withBuilt(blankCourse(), 'fan-1', 'fan', pose(10, 10)), 'fan-2', 'fan', pose(40, 10));
  const b = withBuilt(withBuilt(blankCourse(), 'fan-7', 'fan', pose(41, 10)), 'fan-8', 'fan', pose(9, 10));
  const list = layoutDifferences(currentLayout(a), currentLayout(b));
  expect(list.map((each) => each.kind === 'moved' && [each.before.id, each.after.id, each.by])).toEqual([
    ['fan-2', 'fan-7', 1],
    ['fan-1', 'fan-8', 1],
  ]);
});

test('the go differs in order, way, gait, approach and lead', () => {
  const of = (course: Course) =>
    goDifferences(FROM, currentLayout(course)).map(({ obstacle, ...rest }) => [obstacle.id, rest]);
  const [fan, box, run] = FROM.ride.legs;
  if (fan === undefined || box === undefined || run === undefined) throw new Error('three legs');
  expect(of(reorderLeg(BEFORE, run.id, 0))).toEqual([['run-1', { kind: 'order', from: 3, to: 1 }]]);
  expect(of(removeLeg(BEFORE, fan.id))).toEqual([['fan-1', { kind: 'left-out', number: 1 }]]);
  expect(of(addLeg(BEFORE, 'run-1'))).toEqual([['run-1', { kind: 'added', number: 4 }]]);
  const gaits = FROM.obstacles[2]?.passages[0]?.gaits ?? [];
  const other = gaits.find((gait) => gait !== run.gait) ?? 'walk';
  expect(of(changeLeg(BEFORE, run.id, { gait: other, lead: 'left' }))).toEqual([
    ['run-1', { kind: 'gait', number: 3, from: run.gait, to: other }],
    ['run-1', { kind: 'lead', number: 3, from: null, to: 'left' }],
  ]);
  const [first, second] = FROM.obstacles[2]?.passages ?? [];
  expect(of(changeLeg(BEFORE, run.id, { passage: second?.id ?? '' }))).toEqual([
    ['run-1', { kind: 'way', number: 3, from: first?.title, to: second?.title }],
  ]);
  const approach = run.approach === 'walk' ? 'jog' : 'walk';
  expect(of(changeLeg(BEFORE, run.id, { approach }))).toEqual([
    ['run-1', { kind: 'approach', number: 3, from: run.approach, to: approach }],
  ]);
});
