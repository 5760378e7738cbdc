/**
 * A spoke of four 12 ft poles, its line 3 ft in from the outer ends: three landings of 6 ft in about 18 ft (common
 * practice, no source). The same circle over 10 ft poles runs near their ends.
 */
import { describe, expect, test } from 'vitest';
import { findingsOf } from '../../src/core/checks/checks.ts';
import { blankCourse } from '../../src/core/course/blank.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { FOOT } from '../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import { pose } from '../../src/core/plane/pose.ts';
import { type Survey, survey } from '../../src/core/survey.ts';

/** From the marker to the line: half a 1 ft base, 2 ft clear, and 9 ft along a 12 ft pole. */
const LINE = 11.5;

function spoke(length: number): Survey {
  const line = (LINE - 2.5) / length;
  const wheel = buildObstacle('spoke-1', 'spoke', { length: length * FOOT, line, gait: 'lope' }, pose(20, 15));
  if ('why' in wheel) throw new Error(wheel.why);
  return survey(addObstacle(blankCourse({ title: 'Larkhollow Fairground: a wheel' }), wheel));
}

describe('the line round a spoke', () => {
  test('of 12 ft poles has three landings of about 6 ft from pole to pole, in about 18 ft', () => {
    const { line } = spoke(12);
    expect(line.gaps).toHaveLength(3);
    const [first, second] = line.crossings;
    expect(((second?.at ?? 0) - (first?.at ?? 0)) / FOOT).toBeCloseTo(18.064, 2);
    for (const { landings, ridden } of line.gaps) {
      expect(landings.count).toBe(3);
      // From middle to middle a stride is 6 ft; between the faces of 4 in poles it is an inch less.
      expect((landings.each + (18.064158 * FOOT - ridden) / 3) / FOOT).toBeCloseTo(6.02, 2);
      expect(Math.abs(landings.each / FOOT - 6)).toBeLessThan(0.12);
    }
  });

  test('of 10 ft poles on the same circle runs off the comfortable part of the pole, and is found', () => {
    const found = (of: Survey) => findingsOf(of).filter(({ check }) => check === 'crossing-end');
    expect(found(spoke(12))).toEqual([]);
    expect(found(spoke(10)).map(({ members }) => members?.length)).toEqual([4]);
  });
});
