import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { point, TOUCH } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { rectangle, transformRing } from '../../../src/core/plane/ring.ts';
import {
  ringDistance,
  ringPointDistance,
  ringSegmentDistance,
  segmentDistance,
  segmentIntersection,
  segmentPointDistance,
  squaredDistance,
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

describe('the tolerance of a crossing', () => {
  // One tolerance on the ground: it must not grow with the length of a segment.
  test.each([0.3, 3, 3000])(
    'a segment of %d m that ends short of another by half of TOUCH meets it, by twice TOUCH not',
    (length) => {
      const wall = [point(-length, 0), point(length, 0)] as const;
      const endingAt = (y: number) => [point(0, y + length), point(0, y)] as const;
      for (const [first, second] of [
        [wall, endingAt(TOUCH / 2)],
        [endingAt(TOUCH / 2), wall],
      ] as const) {
        expect(segmentIntersection(first, second)).toBeDefined();
        expect(segmentDistance(first, second)).toBe(0);
      }
      for (const [first, second] of [
        [wall, endingAt(2 * TOUCH)],
        [endingAt(2 * TOUCH), wall],
      ] as const) {
        expect(segmentIntersection(first, second)).toBeUndefined();
        expect(segmentDistance(first, second)).toBeCloseTo(2 * TOUCH, 9);
      }
    },
  );

  test('the end beyond which it is missed may be either end of either segment', () => {
    for (const x of [-2 * TOUCH, -TOUCH / 2, 10 + TOUCH / 2, 10 + 2 * TOUCH]) {
      const upright = [point(x, -1), point(x, 1)] as const;
      const isNear = x > -TOUCH && x < 10 + TOUCH;
      expect(segmentIntersection(FLAT, upright) !== undefined, `${x}`).toBe(isNear);
      expect(segmentIntersection(upright, FLAT) !== undefined, `${x}`).toBe(isNear);
    }
  });

  test('segments that lie along each other have no single crossing, at any length', () => {
    for (const length of [0.3, 3000]) {
      const one = [point(0, 0), point(length, length / 3)] as const;
      const shifted = [point(length / 4, length / 12), point(2 * length, (2 * length) / 3)] as const;
      expect(segmentIntersection(one, shifted)).toBeUndefined();
      expect(segmentDistance(one, shifted)).toBeLessThan(1e-9);
    }
  });

  test('the squared distance is the square of the distance', () => {
    const coordinate = fc.double({ min: -20, max: 20, noNaN: true });
    const anywhere = fc.tuple(coordinate, coordinate).map(([x, y]) => point(x, y));
    fc.assert(
      fc.property(anywhere, anywhere, anywhere, (at, a, b) => {
        expect(Math.sqrt(squaredDistance(at, a, b))).toBeCloseTo(segmentPointDistance([a, b], at), 9);
      }),
    );
    expect(squaredDistance(point(3, 4), point(0, 0), point(0, 0))).toBe(25);
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
