import { expect, test } from 'vitest';
import { pathEnd } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { ridePositionAt, secondsAt } from '../../../src/core/ride/playing.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, roundCourse, run } from './hand-laid.ts';

const { line } = survey(roundCourse());

test('the horse is at the start when the go begins, and at the end when it is over', () => {
  expect(
    distance(ridePositionAt(line, 0)?.pose ?? { x: 0, y: 0 }, line.elements[0]?.path[0]?.start ?? { x: 9, y: 9 }),
  ).toBeLessThan(1e-9);
  const end = pathEnd(line.elements.at(-1)?.path ?? []);
  for (const seconds of [line.clock.go, line.clock.go + 100]) {
    expect(distance(ridePositionAt(line, seconds)?.pose ?? { x: 0, y: 0 }, end)).toBeLessThan(1e-6);
  }
});

test('where the horse is and when undo each other', () => {
  for (const seconds of [0.5, 7, 20, 40]) {
    const riding = ridePositionAt(line, seconds);
    expect(secondsAt(line, riding?.at ?? Number.NaN, riding?.element)).toBeCloseTo(seconds, 9);
  }
});

test('it goes forward all the time, and never further than its gait carries it', () => {
  let before = 0;
  for (let seconds = 0; seconds < line.clock.go; seconds += 0.5) {
    const at = ridePositionAt(line, seconds)?.at ?? Number.NaN;
    expect(at).toBeGreaterThanOrEqual(before);
    expect(at - before).toBeLessThan(1.5);
    before = at;
  }
});

test('there is no horse where there is no line', () => {
  expect(
    ridePositionAt(
      survey(course([run('run-1', { x: 9, y: 5, angle: 0 })], { start: { x: 3, y: 5, angle: 0 }, legs: [] })).line,
      1,
    ),
  ).toBeUndefined();
});
