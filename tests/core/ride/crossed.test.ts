/** Where the line crosses its poles, moved along them: the line follows. */
import { describe, expect, test } from 'vitest';
import { moveCrossings } from '../../../src/core/course/edit-crossings.ts';
import { flipObstacles } from '../../../src/core/course/edit-obstacles.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { survey } from '../../../src/core/survey.ts';
import { course, fan, leg, roundCourse } from './hand-laid.ts';

const round = roundCourse();
const moved = moveCrossings(round, 'leg-fan-1', new Map([[1, 0.8]]));

function fractions(of: typeof round): number[] {
  return survey(of)
    .line.crossings.filter(({ obstacle }) => obstacle === 'fan-1')
    .map(({ fraction }) => fraction);
}

describe('a crossing moved along its pole', () => {
  test('is where the line goes over it, and the others stay', () => {
    expect(fractions(round)).toEqual([2 / 3, 2 / 3, 2 / 3]);
    expect(fractions(moved)).toEqual([2 / 3, 0.8, 2 / 3]);
    const [before, after] = [round, moved].map(
      (of) => survey(of).line.crossings.find(({ key }) => key === 'fan-1/pole-2')?.pose ?? pose(0, 0),
    );
    expect(distance(before ?? pose(0, 0), after ?? pose(0, 0))).toBeCloseTo((0.8 - 2 / 3) * 12 * FOOT, 6);
  });

  test('goes along in the mirror', () => {
    expect(fractions(flipObstacles(moved, ['fan-1']))).toEqual([2 / 3, 0.8, 2 / 3]);
  });

  test('with all the others of a fan rides the wider circle, concentric', () => {
    const ride = { start: pose(33, 4, Math.PI / 2), legs: [leg('fan-1')] };
    const out = new Map([0, 1, 2].map((place) => [place, 0.9]));
    const on = moveCrossings(course([fan('fan-1', pose(30, 15, 0), { radius: 4 })], ride), 'leg-fan-1', out);
    const over = survey(on).line.elements.find(({ part }) => part === 'obstacle');
    const radius = 4 + (0.9 - 2 / 3) * 12 * FOOT;
    expect(over?.path.length).toBeGreaterThan(0);
    for (const { curvature } of over?.path ?? []) expect(1 / curvature).toBeCloseTo(radius, 6);
  });
});
