import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shortestDubinsLength, shortestDubinsPath } from '../../../src/core/plane/dubins.ts';
import { dubinsThroughWaypoints } from '../../../src/core/plane/dubins-waypoints.ts';
import { pathEnd, pathPoints } from '../../../src/core/plane/path.ts';
import { distance, point } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';

/** The coarse grid may miss the best of several ways round that are nearly as long. */
const MISSED = 1.005;

describe('the shortest path through points', () => {
  test('without points is the shortest path', () => {
    const [from, to] = [pose(0, 0, 1), pose(8, 3, -2)];
    const found = dubinsThroughWaypoints(from, [], to, 1.5);
    expect(found.length).toBeCloseTo(shortestDubinsPath(from, to, 1.5).length, 9);
    expect(found.headings).toEqual([]);
  });

  test('points on the straight change nothing', () => {
    const found = dubinsThroughWaypoints(pose(0, 0, 0), [point(3, 0), point(5, 0)], pose(9, 0, 0), 2);
    expect(found.length).toBeCloseTo(9, 6);
    for (const heading of found.headings) expect(heading).toBeCloseTo(0, 4);
  });

  test('a point on the circle of a half turn is passed along the circle', () => {
    const found = dubinsThroughWaypoints(pose(0, 0, 0), [point(2, 2)], pose(0, 4, Math.PI), 2);
    expect(found.length).toBeCloseTo(2 * Math.PI, 6);
  });

  test('goes through its points, ends where it should and is no shorter than the chords', () => {
    const at = fc.record({
      x: fc.double({ min: -10, max: 10, noNaN: true }),
      y: fc.double({ min: -10, max: 10, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(at, { minLength: 1, maxLength: 3 }), (points) => {
        const [start, end] = [pose(-12, 0, 0), pose(12, 0, 0.5)];
        const found = dubinsThroughWaypoints(start, points, end, 1.5);
        const places = pathPoints(found.path, 0.05);
        for (const each of points) {
          expect(Math.min(...places.map((place) => distance(place, each)))).toBeLessThan(1e-6);
        }
        expect(distance(pathEnd(found.path), end)).toBeLessThan(1e-6);
        const chords = [start, ...points, end];
        const least = chords.slice(1).reduce((sum, to, i) => sum + distance(chords[i] ?? to, to), 0);
        expect(found.length).toBeGreaterThanOrEqual(least - 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  // Independent of the rounds of refinement: every heading at the one point, a thousandth of a turn apart.
  test('through one point is no longer than the best of all headings tried one by one', () => {
    const heading = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
    const middle = fc.record({
      x: fc.double({ min: -8, max: 8, noNaN: true }),
      y: fc.double({ min: -8, max: 8, noNaN: true }),
    });
    fc.assert(
      fc.property(middle, heading, heading, (at, first, last) => {
        const [start, end] = [pose(-6, 0, first), pose(6, 1, last)];
        let best = Number.POSITIVE_INFINITY;
        for (let i = 0; i < 1000; i += 1) {
          const through = pose(at.x, at.y, (2 * Math.PI * i) / 1000);
          best = Math.min(best, shortestDubinsLength(start, through, 2) + shortestDubinsLength(through, end, 2));
        }
        const found = dubinsThroughWaypoints(start, [point(at.x, at.y)], end, 2);
        expect(found.length).toBeLessThanOrEqual(best * MISSED + 1e-9);
      }),
    );
  });

  test('a refined heading is right to a millionth of a radian', () => {
    // By symmetry the way over the top of the hill is level there.
    const found = dubinsThroughWaypoints(pose(-7, 0, 0.3), [point(0, 2)], pose(7, 0, -0.3), 2);
    expect(Math.abs(found.headings[0] ?? 1)).toBeLessThan(1e-6);
  });

  test('is the same every time', () => {
    const once = () => dubinsThroughWaypoints(pose(0, 0, 0), [point(4, 3), point(2, 8)], pose(0, 0, 3), 1);
    expect(once()).toEqual(once());
  });
});
