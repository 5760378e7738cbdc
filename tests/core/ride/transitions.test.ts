import { describe, expect, test } from 'vitest';
import type { Leg } from '../../../src/core/course/course.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
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
  });

  test('to the gait of the obstacle is done a horse’s length before it', () => {
    const line = two(20, { approach: 'jog', gait: 'walk' });
    const [, down] = line.transitions;
    expect(down).toMatchObject({ before: 'jog', after: 'walk', fits: true });
    expect((down?.from ?? 0) + (down?.length ?? 0)).toBeCloseTo((line.elements[3]?.from ?? 0) - BODY, 9);
  });

  test('without room is found: up and down again do not both fit on a short way', () => {
    const fits = (apart: number) => two(apart, { approach: 'lope', gait: 'walk' }).transitions.map((each) => each.fits);
    expect(fits(20)).toEqual([true, true, true]);
    expect(fits(6)).toEqual([true, false, false]);
  });
});
