import { describe, expect, test } from 'vitest';
import type { Leg } from '../../../src/core/course/course.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { minTurnRadius } from '../../../src/core/horses/turns.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import type { Line } from '../../../src/core/ride/line.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, leg, run } from './hand-laid.ts';

const BODY = STOCK_HORSE.bodyLength.value;

/** Two runs of two poles on a straight, the second's middle `apart` metres after the first's. */
function two(apart: number, second: Partial<Leg>): Line {
  const obstacles = [run('run-1', pose(15, 5, 0), { poles: 2 }), run('run-2', pose(15 + apart, 5, 0), { poles: 2 })];
  return survey(course(obstacles, { start: pose(3, 5, 0), legs: [leg('run-1'), leg('run-2', second)] })).line;
}

describe('a transition', () => {
  test('from the stand is at the start, and takes its time at half the speed it ends in', () => {
    const [first, ...more] = two(20, {}).transitions;
    expect(more).toEqual([]);
    const jog = STOCK_HORSE.gaits.jog.stride.value / STOCK_HORSE.gaits.jog.period.value;
    expect(first).toMatchObject({ before: 'standing', after: 'jog', from: 0, leg: 0, fits: true });
    expect(first?.length).toBeCloseTo((STOCK_HORSE.transition.up.value * jog) / 2, 9);
  });

  test('to the gait of the way is made a horse’s length after the obstacle', () => {
    const line = two(20, { approach: 'lope', gait: 'lope' });
    const [, up] = line.transitions;
    expect(up).toMatchObject({ before: 'jog', after: 'lope', leg: 1, fits: true });
    expect(up?.from).toBeCloseTo((line.elements[2]?.from ?? 0) + BODY, 9);
    expect(up?.at).toBeCloseTo((up?.from ?? 0) + (up?.length ?? 0) / 2, 9);
  });

  test('to the gait of the obstacle is done a horse’s length before it', () => {
    const line = two(20, { approach: 'jog', gait: 'walk' });
    const [, down] = line.transitions;
    expect(down).toMatchObject({ before: 'jog', after: 'walk', fits: true });
    expect((down?.from ?? 0) + (down?.length ?? 0)).toBeCloseTo((line.elements.at(-1)?.from ?? 0) - BODY, 9);
  });

  test('cuts the way there: jogged up to it and walked from it on, in its own time', () => {
    const { elements, transitions } = two(20, { approach: 'jog', gait: 'walk' });
    const way = elements.filter(({ leg, part }) => leg === 1 && part === 'approach');
    expect(way.map(({ gait }) => gait)).toEqual(['jog', 'walk']);
    expect(way[1]?.from).toBe(transitions[1]?.at);
    const [jogged, walked] = way.map(({ length, moving }) => moving / length);
    expect(jogged).toBeCloseTo(STOCK_HORSE.gaits.jog.period.value / STOCK_HORSE.gaits.jog.stride.value, 9);
    expect(walked).toBeCloseTo(STOCK_HORSE.gaits.walk.period.value / STOCK_HORSE.gaits.walk.stride.value, 9);
    const extra = way.map(({ seconds, moving }) => seconds - moving);
    expect(extra).toEqual([0, expect.closeTo(STOCK_HORSE.transition.down.value, 9)]);
  });

  test('is made before a turn that is too tight for the faster gait, but off the pole', () => {
    // Straight back past the side of the first run: the way turns at once.
    const obstacles = [run('run-1', pose(15, 10, 0), { poles: 2 }), run('run-2', pose(15, 14, Math.PI), { poles: 2 })];
    const legs = [leg('run-1', { gait: 'lope', approach: 'lope' }), leg('run-2', { approach: 'walk', gait: 'walk' })];
    const { elements, transitions } = survey(course(obstacles, { start: pose(3, 10, 0), legs })).line;
    const [, down] = transitions;
    const radii = (gait: string) =>
      elements
        .filter((each) => each.leg === 1 && each.gait === gait)
        .flatMap(({ path }) => path.map(({ curvature }) => 1 / Math.abs(curvature)));
    expect(down).toMatchObject({ before: 'lope', after: 'walk', steady: false });
    expect((down?.at ?? 0) - (elements[2]?.from ?? 0)).toBeGreaterThanOrEqual(STOCK_HORSE.wheelbase.value / 2);
    expect(Math.min(...radii('lope'))).toBeGreaterThan(minTurnRadius(STOCK_HORSE, 'lope') * 0.99);
    expect(Math.min(...radii('walk'))).toBeLessThan(minTurnRadius(STOCK_HORSE, 'lope'));
  });

  test('over one pole alone is made before and after it', () => {
    const obstacles = [run('run-1', pose(15, 5, 0)), run('run-2', pose(30, 5, 0), { poles: 1 })];
    const legs = [leg('run-1'), leg('run-2', { gait: 'walk' })];
    const { transitions, crossings } = survey(
      course(obstacles, { start: pose(3, 5, 0), legs, end: pose(45, 5, 0) }),
    ).line;
    const down = transitions.find(({ after }) => after === 'walk');
    expect(crossings.at(-1)?.key).toBe('run-2/pole-1');
    expect((down?.at ?? 0) + (down?.length ?? 0) / 2).toBeCloseTo((crossings.at(-1)?.at ?? 0) - BODY, 9);
  });

  test('without room is found: up and down again do not both fit on a short way', () => {
    const fits = (apart: number) => two(apart, { approach: 'lope', gait: 'walk' }).transitions.map((each) => each.fits);
    expect(fits(20)).toEqual([true, true, true]);
    expect(fits(6)).toEqual([true, false, false]);
  });
});
