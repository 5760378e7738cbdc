import { describe, expect, test } from 'vitest';
import { pose } from '../../../src/core/plane/pose.ts';
import {
  boundsIntersect,
  rectangle,
  ringArea,
  ringBounds,
  ringContains,
  transformRing,
} from '../../../src/core/plane/ring.ts';

describe('a ring', () => {
  test('a rectangle of 3 by 4 covers 12, counter-clockwise positive', () => {
    expect(ringArea(rectangle(3, 4))).toBeCloseTo(12, 12);
    expect(ringArea([...rectangle(3, 4)].reverse())).toBeCloseTo(-12, 12);
  });

  test.each([
    [0, 0, true],
    [1.5, 0, true],
    [1.5, 2, true],
    [1.5000005, 0, true],
    [1.501, 0, false],
    [0, -2.1, false],
  ])('of 3 by 4 holds (%f, %f): %s; its edge belongs to it', (x, y, holds) => {
    expect(ringContains(rectangle(3, 4), { x, y })).toBe(holds);
  });

  test('that is not convex leaves its notch out', () => {
    const corner = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 1 },
      { x: 1, y: 1 },
      { x: 1, y: 4 },
      { x: 0, y: 4 },
    ];
    expect(ringContains(corner, { x: 0.5, y: 3 })).toBe(true);
    expect(ringContains(corner, { x: 2, y: 2 })).toBe(false);
  });

  test('turned by a quarter has its sides swapped', () => {
    const box = ringBounds(transformRing(rectangle(3, 4), pose(10, 20, Math.PI / 2)));
    expect(box.minX).toBeCloseTo(8, 12);
    expect(box.maxY).toBeCloseTo(21.5, 12);
  });

  test('boxes meet when they touch, and within reach', () => {
    const a = { minX: 0, minY: 0, maxX: 1, maxY: 1 };
    expect(boundsIntersect(a, { minX: 1, minY: 0, maxX: 2, maxY: 1 })).toBe(true);
    expect(boundsIntersect(a, { minX: 1.4, minY: 0, maxX: 2, maxY: 1 })).toBe(false);
    expect(boundsIntersect(a, { minX: 1.4, minY: 0, maxX: 2, maxY: 1 }, 0.5)).toBe(true);
  });
});
