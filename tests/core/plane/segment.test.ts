import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { point } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { rectangle, transformRing } from '../../../src/core/plane/ring.ts';
import {
  ringDistance,
  ringPointDistance,
  ringSegmentDistance,
  segmentDistance,
  segmentIntersection,
  segmentPointDistance,
} from '../../../src/core/plane/segment.ts';

const FLAT = [point(0, 0), point(10, 0)] as const;

describe('segments', () => {
  test('a point beside one is as far as the perpendicular, past its end as far as the end', () => {
    expect(segmentPointDistance(FLAT, point(4, 3))).toBe(3);
    expect(segmentPointDistance(FLAT, point(13, 4))).toBe(5);
  });

  test('two that cross have no distance and one crossing', () => {
    const other = [point(5, -5), point(5, 5)] as const;
    expect(segmentDistance(FLAT, other)).toBe(0);
    expect(segmentIntersection(FLAT, other)).toEqual({ x: 5, y: 0 });
  });

  test('touching at an end is crossing', () => {
    expect(segmentIntersection(FLAT, [point(3, 0), point(3, 4)])).toEqual({ x: 3, y: 0 });
  });

  test('side by side they are as far as the gap', () => {
    expect(segmentDistance(FLAT, [point(2, 1.5), point(30, 1.5)])).toBe(1.5);
    expect(segmentIntersection(FLAT, [point(2, 1.5), point(30, 1.5)])).toBeUndefined();
  });
});

describe('rings', () => {
  const pole = rectangle(4, 0.1);

  test('two poles 1 m apart face to face are 1 m apart', () => {
    expect(ringDistance(pole, transformRing(pole, pose(0, 1.1, 0)))).toBeCloseTo(1, 12);
  });

  test('crossed poles and a pole inside a box have no distance', () => {
    expect(ringDistance(pole, transformRing(pole, pose(0, 0, 1)))).toBe(0);
    expect(ringDistance(rectangle(9, 9), pole)).toBe(0);
    expect(ringDistance(pole, rectangle(9, 9))).toBe(0);
  });

  test('a point and a segment beside a pole', () => {
    expect(ringPointDistance(pole, point(0, 1.05))).toBeCloseTo(1, 12);
    expect(ringPointDistance(pole, point(1, 0))).toBe(0);
    expect(ringSegmentDistance(pole, [point(-5, 0.3), point(5, 0.3)])).toBeCloseTo(0.25, 12);
    expect(ringSegmentDistance(pole, [point(1, -3), point(1, 3)])).toBe(0);
  });

  test('distance is the same from either side', () => {
    const where = fc.record({
      x: fc.double({ min: -5, max: 5, noNaN: true }),
      y: fc.double({ min: -5, max: 5, noNaN: true }),
      angle: fc.double({ min: -4, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(where, (at) => {
        const other = transformRing(rectangle(3, 0.2), at);
        expect(ringDistance(pole, other)).toBeCloseTo(ringDistance(other, pole), 12);
      }),
    );
  });
});
