import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cutPath,
  pathBounds,
  pathEnd,
  pathFrom,
  pathLength,
  pathPoints,
  poseAt,
  totalTurn,
} from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { ORIGIN, pose } from '../../../src/core/plane/pose.ts';

const QUARTER = pathFrom(ORIGIN, [{ length: Math.PI, curvature: 0.5 }]);

describe('a path', () => {
  test('a quarter arc of radius 2 is π long and ends at (2, 2) heading up', () => {
    expect(pathLength(QUARTER)).toBeCloseTo(Math.PI, 12);
    const end = pathEnd(QUARTER);
    expect([end.x, end.y, end.angle].map((value) => value.toFixed(9))).toEqual([
      '2.000000000',
      '2.000000000',
      (Math.PI / 2).toFixed(9),
    ]);
  });

  test('a right turn mirrors a left turn', () => {
    const end = pathEnd(pathFrom(ORIGIN, [{ length: Math.PI, curvature: -0.5 }]));
    expect(end.x).toBeCloseTo(2, 12);
    expect(end.y).toBeCloseTo(-2, 12);
  });

  test('a 3-4-5 straight ends where Pythagoras says', () => {
    const end = pathEnd(pathFrom(pose(1, 1, Math.atan2(4, 3)), [{ length: 5, curvature: 0 }]));
    expect(end.x).toBeCloseTo(4, 12);
    expect(end.y).toBeCloseTo(5, 12);
  });

  test('before its start and past its end it stays at its first and last pose', () => {
    expect(poseAt(QUARTER, -1)).toEqual(ORIGIN);
    expect(poseAt(QUARTER, 100)).toEqual(pathEnd(QUARTER));
  });

  test('without length it is one stretch at its start', () => {
    const still = pathFrom(pose(3, 4, 1), [{ length: 0, curvature: 0 }]);
    expect(still).toHaveLength(1);
    expect(pathEnd(still)).toEqual(pose(3, 4, 1));
  });

  test('an empty path has no end and says so', () => {
    expect(() => pathEnd([])).toThrow(/at least one stretch/);
  });

  test('samples are no further apart than the step and include the ends', () => {
    const points = pathPoints(QUARTER, 0.3);
    for (const [i, each] of points.slice(1).entries())
      expect(distance(each, points[i] ?? each)).toBeLessThanOrEqual(0.3);
    expect(points.at(-1)?.x).toBeCloseTo(2, 12);
  });

  test('the box of a half circle holds its crown', () => {
    const box = pathBounds(pathFrom(ORIGIN, [{ length: 2 * Math.PI, curvature: 0.5 }]));
    expect(box.maxX).toBeCloseTo(2, 12);
    expect(box.minX).toBeCloseTo(0, 9);
    expect(box.maxY).toBeCloseTo(4, 12);
  });

  test('turning left and then right adds up', () => {
    const path = pathFrom(ORIGIN, [
      { length: 1, curvature: 1 },
      { length: 2, curvature: -0.5 },
    ]);
    expect(totalTurn(path)).toBeCloseTo(2, 12);
  });

  test('its box holds every point of it', () => {
    const part = fc.record({
      length: fc.double({ min: 0.01, max: 8, noNaN: true }),
      curvature: fc.double({ min: -1, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 4 }),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (parts, a) => {
          const path = pathFrom(pose(0, 0, a), parts);
          const box = pathBounds(path);
          for (const { x, y } of pathPoints(path, 0.1)) {
            expect(x).toBeGreaterThanOrEqual(box.minX - 1e-9);
            expect(x).toBeLessThanOrEqual(box.maxX + 1e-9);
            expect(y).toBeGreaterThanOrEqual(box.minY - 1e-9);
            expect(y).toBeLessThanOrEqual(box.maxY + 1e-9);
          }
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('a path cut in two', () => {
  const PATH = pathFrom(pose(1, 2, 0.3), [
    { length: 2, curvature: 0 },
    { length: 3, curvature: 0.4 },
    { length: 1, curvature: -0.2 },
  ]);

  test('has the same poses, the second part from the cut on', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (cut, share) => {
          const [before, after] = cutPath(PATH, cut);
          expect(pathLength(before) + pathLength(after)).toBeCloseTo(6, 9);
          for (const [part, from] of [
            [before, 0],
            [after, cut],
          ] as const) {
            const along = share * pathLength(part);
            const [there, here] = [poseAt(part, along), poseAt(PATH, from + along)];
            expect(distance(there, here)).toBeLessThan(1e-8);
            expect(there.angle).toBeCloseTo(here.angle, 8);
          }
        },
      ),
    );
  });

  test('where two stretches meet has those stretches, and none of length 0', () => {
    const [before, after] = cutPath(PATH, 2 + 3);
    expect([...before, ...after]).toEqual([...PATH]);
    expect([...before, ...after].every((stretch, i) => stretch === PATH[i])).toBe(true);
  });

  test('at an end has one part without length, with the pose of that end', () => {
    expect(cutPath(PATH, 0)[0]).toEqual([{ start: PATH[0]?.start, length: 0, curvature: 0 }]);
    expect(cutPath(PATH, 6)[1]).toEqual([{ start: pathEnd(PATH), length: 0, curvature: 0 }]);
  });

  test('at the same place again is the same two paths', () => {
    expect(cutPath(PATH, 2.5)).toBe(cutPath(PATH, 2.5));
  });
});
