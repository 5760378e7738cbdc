import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pathEnd, pathFrom, pathLength } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { normalizeAngle, pose } from '../../../src/core/plane/pose.ts';
import { biarc, connection, mergedPath, tightestRadius } from '../../../src/core/ride/connection.ts';

describe('a joint', () => {
  test('between poses on one circle is that arc, at whatever gait', () => {
    const to = pathEnd(pathFrom(pose(0, 0, 0), [{ length: 2, curvature: 0.5 }]));
    const found = connection(pose(0, 0, 0), to, 5);
    expect(found.calm).toBe(true);
    expect(found.path).toHaveLength(1);
    expect(found.path[0]?.curvature).toBeCloseTo(0.5, 12);
    expect(pathLength(found.path)).toBeCloseTo(2, 12);
  });

  test('straight ahead is exactly straight', () => {
    const found = connection(pose(1, 1, 0.3), pose(1 + 4 * Math.cos(0.3), 1 + 4 * Math.sin(0.3), 0.3), 1);
    expect(found.path).toHaveLength(1);
    expect(found.path[0]?.curvature).toBe(0);
    expect(pathLength(found.path)).toBeCloseTo(4, 12);
  });

  test('to one side is two equal arcs that bend apart', () => {
    const found = connection(pose(0, 0, 0), pose(4, 1, 0), 1);
    expect(found.path.map(({ curvature }) => Math.sign(curvature))).toEqual([1, -1]);
    // Half the way: an arc through (2, 0.5) from heading 0: radius (2² + 0.5²) / (2 · 0.5).
    expect(tightestRadius(found.path)).toBeCloseTo(4.25, 9);
    expect(found.calm).toBe(true);
  });

  test('that would have to turn about falls back on the shortest path and is not calm', () => {
    const found = connection(pose(0, 0, 0), pose(1, 0, Math.PI), 2);
    expect(found.calm).toBe(false);
    expect(tightestRadius(found.path)).toBeCloseTo(2, 9);
  });

  test('to where one already is has no length', () => {
    expect(pathLength(connection(pose(2, 2, 1), pose(2, 2, 1), 1).path)).toBe(0);
  });

  test('always ends where it should, heading where it should', () => {
    const at = fc.record({
      x: fc.double({ min: -6, max: 6, noNaN: true }),
      y: fc.double({ min: -6, max: 6, noNaN: true }),
      angle: fc.double({ min: -3, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(at, (to) => {
        const end = pathEnd(connection(pose(0, 0, 0), to, 1.5).path);
        expect(distance(end, to)).toBeLessThan(1e-5);
        expect(Math.abs(normalizeAngle(end.angle - to.angle))).toBeLessThan(1e-5);
      }),
    );
  });
});

test('two arcs about a half circle keep its radius', () => {
  expect(tightestRadius(biarc(pose(0, 0, 0), pose(0, 4, Math.PI)) ?? [])).toBeCloseTo(2, 9);
});

test('stretches on one curve become one, and stretches without length go', () => {
  const path = pathFrom(pose(0, 0, 0), [
    { length: 1, curvature: 0.25 },
    { length: 2, curvature: 0.25 },
    { length: 1, curvature: 0 },
  ]);
  const still = pathFrom(pose(0, 0, 0), []);
  expect(mergedPath([...still, ...path]).map(({ length }) => length)).toEqual([3, 1]);
  expect(mergedPath(still)).toEqual(still);
});
