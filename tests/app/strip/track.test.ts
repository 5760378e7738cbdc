import { expect, test } from 'vitest';
import { gapSentence, onGauge, stripGaps, stripLegs } from '../../../src/app/strip/track.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { FOOT, INCH } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { survey } from '../../../src/core/survey.ts';

/** One run of jog-overs with the given gap, in the middle of an empty arena. */
function surveyOfRun(gap: number) {
  const run = buildObstacle('run-1', 'run', { gap, gait: 'jog' }, pose(30, 15));
  if ('why' in run) throw new Error(run.why);
  return survey(addObstacle(blankCourse(), run));
}

test('a leg is the way to its obstacle and the obstacle, end to end along the line', () => {
  const there = surveyOfRun(3 * FOOT);
  const [leg, more] = stripLegs(there);
  expect(more).toBeUndefined();
  expect(leg).toMatchObject({ leg: 0, obstacle: 'run-1', title: 'Jog-overs', from: 0 });
  expect(leg?.over).toBeGreaterThan(0);
  expect(leg?.to).toBeCloseTo(there.line.length, 9);
});

test('a gap inside its band is good, a gap that no jog fits is off, and the sentence says so', () => {
  const good = stripGaps(surveyOfRun(3 * FOOT + 2 * INCH));
  expect(good.map((gap) => gap.fit)).toEqual(['good', 'good', 'good']);
  const [off] = stripGaps(surveyOfRun(4 * FOOT + 6 * INCH));
  if (off === undefined) throw new Error('the run has no gap');
  expect(off.fit).toBe('off');
  expect(gapSentence(off, 'ft')).toMatch(/^Gap 1 of Jog-overs: 4' 6", out of range\. The jog asks for 3' to 3' 6"/);
});

test('the band shown is the whole multiple that lies nearest', () => {
  const [gap] = stripGaps(surveyOfRun(6 * FOOT + 4 * INCH));
  expect(gap?.fit).toBe('good');
  expect(gap?.band?.least).toBeCloseTo(6 * FOOT, 9);
  expect(gap?.band?.most).toBeCloseTo(7 * FOOT, 9);
});

test('a gauge shows the band in its middle third and holds what is far out at its ends', () => {
  const band = { least: 3, most: 6 };
  expect(onGauge(band, 3)).toBeCloseTo(1 / 3, 9);
  expect(onGauge(band, 6)).toBeCloseTo(2 / 3, 9);
  expect(onGauge(band, 100)).toBe(1);
  expect(onGauge(band, 0)).toBe(0);
});
