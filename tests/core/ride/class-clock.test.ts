import { describe, expect, test } from 'vitest';
import type { ClassEntry } from '../../../src/core/course/course.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { USUAL_CLASS } from '../../../src/core/ride/class-clock.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, leg, roundCourse, run } from './hand-laid.ts';

const HOUR = 3600;

/** A run of poles, and a side pass, for so many entries. */
function withSidePass(entry: Partial<ClassEntry>) {
  const side = buildObstacle('side-1', 'side-pass', {}, pose(35, 15, 0));
  if (side.kind === 'infeasible' || !('passages' in side)) throw new Error('a side pass is feasible as usual');
  const passage = side.passages[0]?.id ?? '';
  const legs = [leg('run-1'), leg('side-1', { passage, gait: 'walk', approach: 'walk' })];
  const on = course([run('run-1', pose(15, 8, 0)), side], { start: pose(3, 8, 0), legs });
  return survey({ ...on, class: { ...on.class, ...entry } }).classClock;
}

describe('the class', () => {
  test('takes its goes, what lies between them, and the drags', () => {
    const clock = withSidePass({ entries: 60, changeover: 20, dragEvery: 20, drag: 300 });
    expect(clock.riding).toBeCloseTo(60 * clock.go, 9);
    expect(clock.changeovers).toBe(59 * 20);
    // After 20 and after 40; after 60 nobody is left.
    expect([clock.drags, clock.dragging]).toEqual([2, 600]);
    expect(clock.whole).toBeCloseTo(60 * clock.go + 59 * 20 + 600, 9);
  });

  test('that says nothing takes what is usual, and has all the time', () => {
    const clock = withSidePass({ entries: 26 });
    expect(clock).toMatchObject({ drags: 1, dragging: USUAL_CLASS.drag, changeovers: 25 * USUAL_CLASS.changeover });
    expect(clock).toMatchObject({ allotted: null, over: 0, shorten: [] });
  });

  test('is never dragged when it says 0, and of nobody takes no time', () => {
    expect(withSidePass({ entries: 500, dragEvery: 0 }).drags).toBe(0);
    expect(withSidePass({ entries: 0 })).toMatchObject({ whole: 0, drags: 0, changeovers: 0, over: 0 });
  });

  test('is divided among the numbers of the ride, way and obstacle', () => {
    const { legs, go, riding } = withSidePass({ entries: 40 });
    expect(legs.reduce((sum, { way, own }) => sum + way + own, 0)).toBeCloseTo(go, 9);
    expect(legs.reduce((sum, each) => sum + each.class, 0)).toBeCloseTo(riding, 9);
    for (const { moving, own } of legs) expect(moving).toBeLessThanOrEqual(own);
  });
});

describe('a side pass', () => {
  test('that is fine for 15 entries shows what it does to 70', () => {
    const [few, many] = [15, 70].map((entries) => withSidePass({ entries, allotted: 1.25 * HOUR }));
    const cost = (clock: typeof few) => clock?.legs.find(({ obstacle }) => obstacle === 'side-1')?.own ?? Number.NaN;
    expect(few).toMatchObject({ over: 0, shorten: [] });
    expect(few?.whole).toBeLessThan(0.5 * HOUR);
    expect(many?.over).toBeGreaterThan(0);
    // In the class it takes 70 times what one horse takes there.
    expect(many?.legs[1]?.class).toBeCloseTo((70 / 15) * (few?.legs[1]?.class ?? 0), 6);
    expect((70 * cost(many)) / 60).toBeGreaterThan(15);
    expect((15 * cost(few)) / 60).toBeLessThan(6);
    expect(many?.shorten[0]).toMatchObject({ obstacle: 'side-1', leg: 1 });
  });

  test('is shortened by what is over, divided among the goes, where it has that much to give', () => {
    const clock = withSidePass({ entries: 70, allotted: 1 });
    expect(clock.shorten[0]).toMatchObject({ enough: false });
    const { whole } = clock;
    const nearly = withSidePass({ entries: 70, allotted: whole - 70 });
    expect(nearly.shorten[0]?.by).toBeCloseTo(1, 6);
    expect(nearly.shorten[0]?.enough).toBe(true);
  });
});

test('the survey’s class clock is that of its line', () => {
  const { classClock, line } = survey(roundCourse());
  expect(classClock.go).toBe(line.clock.go);
});
