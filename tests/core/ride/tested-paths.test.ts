import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { pathBounds } from '../../../src/core/plane/path.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { addTested, meetsTested, noTestedPaths } from '../../../src/core/ride/tested-paths.ts';
import { survey } from '../../../src/core/survey.ts';
import { STARTERS } from './courses.ts';
import { obstacle, pole } from './hand-laid.ts';

describe('the paths that were tested', () => {
  const tested = noTestedPaths();
  const paths = [
    [{ start: pose(0, 0, 0), length: 10, curvature: 0 }],
    // Half a circle about (10, 5), and a straight back.
    [
      { start: pose(10, 0, 0), length: 5 * Math.PI, curvature: 0.2 },
      { start: pose(10, 10, Math.PI), length: 10, curvature: 0 },
    ],
  ];
  for (const path of paths) addTested(tested, path, pathBounds(path));
  const poleAt = (x: number, y: number) =>
    placedObstacle(obstacle('it', pose(x, y, 0), [pole('one', pose(0, 0, 0), 2)], []));

  test.each([
    { x: 5, y: 0.25, meets: true },
    { x: 5, y: 0.35, meets: false },
    { x: 5, y: 10, meets: true },
    { x: 14.9, y: 5, meets: true },
    // In the bounds of the half circle, and clear of it.
    { x: 12, y: 5, meets: false },
    { x: 30, y: 5, meets: false },
  ])('are met by a pole at ($x, $y): $meets', ({ x, y, meets }) => {
    expect(meetsTested(tested, poleAt(x, y))).toBe(meets);
  });
});

function waysOf(course: Course) {
  // The box of what was looked at is for drags alone.
  return survey(course).line.ways.map(({ by, kept }) => ({ by, ...kept.found, exploredBounds: undefined }));
}

/** The course with one of its obstacles moved and turned at random. */
function moved(course: Course, roll: () => number): Course {
  const which = Math.floor(roll() * currentLayout(course).obstacles.length);
  const by = { x: (roll() - 0.5) * 4, y: (roll() - 0.5) * 4, angle: (roll() - 0.5) * 0.8 };
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((each, i) => {
      const { x, y, angle } = each.pose;
      return i === which ? { ...each, pose: pose(x + by.x, y + by.y, angle + by.angle) } : each;
    }),
  }));
}

describe('a survey after many edits', () => {
  test.each(STARTERS)('is that of the course alone: %s', (_, begun) => {
    const roll = seededRandom(77);
    let course = begun;
    // Until things lie across the ways of others.
    for (let step = 0; step < 100; step += 1) course = moved(course, roll);
    for (let step = 0; step < 20; step += 1) {
      course = moved(course, roll);
      // A copy shares no object with what was surveyed before: nothing is reused for it.
      expect(waysOf(course)).toEqual(waysOf(structuredClone(course)));
    }
  });
});
