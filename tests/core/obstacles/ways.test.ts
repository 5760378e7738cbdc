/** What is built can be ridden: every way of every kind gives a line without a break, in the direction that it says. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import type { Passage } from '../../../src/core/obstacles/passage.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import type { Line } from '../../../src/core/ride/line.ts';
import { survey } from '../../../src/core/survey.ts';
import { anyValues } from './samples.ts';

/** A field in which nothing is near a wall. */
const field = blankCourse({
  arena: { title: 'Field', length: 400, width: 400, entrance: { wall: 'west', at: 200, width: 4 } },
});

function lineOver(obstacle: Obstacle, { id, gaits }: Passage): Line {
  const course = replaceLayout(addObstacle(field, obstacle), (layout) => ({
    ...layout,
    ride: {
      ...layout.ride,
      legs: layout.ride.legs.map((leg) => ({ ...leg, passage: id, gait: gaits[0] ?? 'walk' })),
    },
  }));
  return survey(course).line;
}

/** The turn of the line over the obstacle, radians: left positive. */
function turned({ elements }: Line): number {
  return elements
    .filter(({ part }) => part === 'obstacle')
    .flatMap(({ path }) => path)
    .reduce((sum, { curvature, length }) => sum + curvature * length, 0);
}

describe.each(OBSTACLE_KINDS.filter(({ id }) => id !== 'scenery').map((kind) => [kind.id, kind] as const))(
  'a %s',
  (id, kind) => {
    test('can be ridden every way that it offers, whatever its values, also in the mirror', () => {
      fc.assert(
        fc.property(anyValues(kind), fc.constantFrom(1 as const, -1 as const), (values, side) => {
          const asked = buildObstacle('it-1', id, values, pose(200, 200, 0.3), side);
          const obstacle =
            'why' in asked ? buildObstacle('it-1', id, { ...values, ...asked.nearest }, pose(200, 200), side) : asked;
          if ('why' in obstacle) throw new Error(obstacle.why);
          expect(obstacle.passages.length).toBeGreaterThan(0);
          for (const passage of obstacle.passages) expect(lineOver(obstacle, passage).breaks, passage.id).toEqual([]);
        }),
        { numRuns: 12 },
      );
    });
  },
);

describe.each(['fan', 'spoke'])('a %s', (id) => {
  test.each([1, -1] as const)('is ridden to the hand that its way names, side %i', (side) => {
    const obstacle = buildObstacle('it-1', id, {}, pose(200, 200), side);
    if ('why' in obstacle) throw new Error(obstacle.why);
    for (const passage of obstacle.passages) {
      const turn = turned(lineOver(obstacle, passage));
      expect(passage.title).toContain(turn > 0 ? 'left' : 'right');
      expect(Math.abs(turn)).toBeGreaterThan(1);
    }
  });
});

test('the line over a fan is the arc that its facts promise', () => {
  const obstacle = buildObstacle('fan-1', 'fan', {}, pose(200, 200));
  if ('why' in obstacle) throw new Error(obstacle.why);
  const [left] = obstacle.passages;
  if (left === undefined) throw new Error('a fan has a way to the left');
  const { elements } = lineOver(obstacle, left);
  const [arc] = elements.filter(({ part }) => part === 'obstacle').flatMap(({ path }) => path);
  expect(1 / (arc?.curvature ?? 0)).toBeCloseTo(10.161452 * 0.3048, 6);
});

test('two poles with a marker to go round between them leave no gap to be judged', () => {
  const obstacle = buildObstacle('square-1', 'square-marker', {}, pose(200, 200));
  if ('why' in obstacle) throw new Error(obstacle.why);
  for (const passage of obstacle.passages) {
    const { gaps, crossings } = lineOver(obstacle, passage);
    expect(crossings).toHaveLength(2);
    expect(gaps).toEqual([]);
  }
});
