import { describe, expect, test } from 'vitest';
import type { Course, Stock } from '../../src/core/course/course.ts';
import { FOOT, INCH } from '../../src/core/measure/quantity.ts';
import { pose } from '../../src/core/plane/pose.ts';
import { survey } from '../../src/core/survey.ts';
import { printsOf, recount } from '../../src/core/survey-prints.ts';
import { course, leg, roundCourse, run } from './ride/hand-laid.ts';

function nudged(before: Course, id: string): Course {
  const [layout] = before.layouts;
  const obstacles = layout.obstacles.map((each) =>
    each.id === id ? { ...each, pose: { ...each.pose, x: each.pose.x + 0.01 } } : each,
  );
  return { ...before, layouts: [{ ...layout, obstacles }] };
}

describe('the survey', () => {
  test('of the same course is the same survey', () => {
    const round = roundCourse();
    expect(survey(round)).toBe(survey(round));
  });

  test('keeps what an edit did not touch', () => {
    const round = roundCourse();
    const before = survey(round);
    const after = survey(nudged(round, 'fan-1'));
    expect(after.obstacles.map((each, i) => each === before.obstacles[i])).toEqual([true, false, true, true, true]);
    // The way to the first obstacle is far from the fan: its path is the same object.
    expect(after.line.elements[0]?.path).toBe(before.line.elements[0]?.path);
    expect(after.line.elements[2]?.path).not.toBe(before.line.elements[2]?.path);
    // The way to the last obstacle begins and ends where it did.
    expect(after.line.elements[8]?.path).toBe(before.line.elements[8]?.path);
  });

  test('counts what a drag worked out anew: the obstacle, the ways to and from it, its own gaps', () => {
    const round = roundCourse();
    const before = survey(round);
    printsOf(before);
    const { obstacles, pieces, ways, passages, gaps } = recount(before, survey(nudged(round, 'fan-1')));
    expect(obstacles).toEqual({ all: 5, anew: 1 });
    expect(pieces).toEqual({ all: 18, anew: 3 });
    expect(ways).toEqual({ all: 5, anew: 2 });
    expect(passages).toEqual({ all: 5, anew: 1 });
    expect(gaps).toEqual({ all: 13, anew: 2 });
    for (const { all, anew } of Object.values(recount(before, before))) expect([all > 0, anew]).toEqual([true, 0]);
  });

  test('works out only the prints of the part that is ridden in one with what moved', () => {
    const legs = ['run-1', 'run-2', 'run-3'].map((id) =>
      leg(id, id === 'run-2' ? { gait: 'walk', approach: 'walk' } : {}),
    );
    const obstacles = [run('run-1', pose(12, 5, 0)), run('run-2', pose(28, 5, 0)), run('run-3', pose(46, 5, 0))];
    const on = course(obstacles, { start: pose(3, 5, 0), legs });
    const before = survey(on);
    const { prints } = recount(before, survey(nudged(on, 'run-3')));
    expect(prints.anew).toBeGreaterThan(10);
    expect(prints.anew).toBeLessThan(prints.all / 2);
  });

  test('moving one pole of an obstacle keeps the others’ footprints', () => {
    const round = roundCourse();
    const [layout] = round.layouts;
    const [first, ...rest] = layout.obstacles;
    if (first === undefined) throw new Error('the course has obstacles');
    const pieces = first.pieces.map((piece, i) => (i === 1 ? { ...piece, pose: { ...piece.pose, y: 0.1 } } : piece));
    const before = survey(round);
    const after = survey({ ...round, layouts: [{ ...layout, obstacles: [{ ...first, pieces }, ...rest] }] });
    expect(after.obstacles[0]?.pieces.map((piece, i) => piece === before.obstacles[0]?.pieces[i])).toEqual([
      true,
      false,
      true,
      true,
    ]);
  });

  test('a pole of a run moved along its own length is crossed where it now lies', () => {
    const only = course([run('run-1', pose(20, 10, 0))], { start: pose(3, 10, 0), legs: [leg('run-1')] });
    const [crossing] = survey(only).line.crossings;
    expect(crossing?.pose.y).toBeCloseTo(10, 9);
    const [moved] = survey(nudged(only, 'run-1')).line.crossings;
    expect((moved?.pose.x ?? 0) - (crossing?.pose.x ?? 0)).toBeCloseTo(0.01, 9);
  });

  test('numbers obstacles by the ride, several for one ridden twice', () => {
    const obstacles = [
      run('run-1', pose(20, 5, 0)),
      run('run-2', pose(20, 15, Math.PI)),
      run('run-3', pose(40, 20, 0)),
    ];
    const legs = [leg('run-2'), leg('run-1'), leg('run-2', { id: 'again' })];
    const { numbers } = survey(course(obstacles, { start: pose(3, 5, 0), legs }));
    expect([...numbers]).toEqual([
      ['run-2', [1, 3]],
      ['run-1', [2]],
    ]);
  });

  test('a horse that is not known is measured as the stock horse', () => {
    expect(survey({ ...roundCourse(), horse: 'unicorn' }).horse.id).toBe('stock-horse');
  });
});

describe('the truck', () => {
  const stock = (id: string, values: Stock['values'], count: number): Stock => ({
    id,
    title: id,
    kind: 'pole',
    values,
    count,
  });
  const only = course([run('run-1', pose(20, 10, 0), { poles: 4 })], { start: pose(3, 10, 0), legs: [leg('run-1')] });

  test('gives a piece from the first line with its kind and sizes, to a last digit', () => {
    const truck = [
      stock('short', { length: 8 * FOOT }, 4),
      stock('long', { length: 12 * FOOT + 4e-7 }, 6),
      stock('any', {}, 9),
    ];
    expect(survey({ ...only, truck }).truck.map(({ title, used, left }) => [title, used, left])).toEqual([
      ['short', 0, 4],
      ['long', 4, 2],
      ['any', 0, 9],
    ]);
  });

  test('counts below nothing when more lie than it has', () => {
    const [use] = survey({ ...only, truck: [stock('long', { thickness: 4 * INCH }, 1)] }).truck;
    expect(use).toMatchObject({ used: 4, left: -3 });
  });

  test('names what no line offers, by key', () => {
    const uses = survey({ ...only, truck: [stock('short', { length: 8 * FOOT }, 4)] }).truck;
    expect(uses.at(-1)).toMatchObject({ stock: null, used: 4, left: -4 });
    expect(uses.at(-1)?.keys).toEqual(['run-1/pole-1', 'run-1/pole-2', 'run-1/pole-3', 'run-1/pole-4']);
  });
});
