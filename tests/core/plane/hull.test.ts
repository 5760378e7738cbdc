import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hull } from '../../../src/core/plane/hull.ts';
import { edges, ringArea } from '../../../src/core/plane/ring.ts';

const points = fc.array(fc.record({ x: fc.integer({ min: -9, max: 9 }), y: fc.integer({ min: -9, max: 9 }) }), {
  minLength: 3,
  maxLength: 20,
});

describe('the hull of points', () => {
  test('of a square with points in it and on its sides is the square', () => {
    const corners = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 2, y: 2 },
      { x: 0, y: 2 },
    ];
    expect(hull([{ x: 1, y: 1 }, { x: 1, y: 0 }, ...corners, { x: 2, y: 1 }])).toEqual(corners);
    expect(ringArea(hull(corners))).toBe(4);
  });

  test('has every point on the left of every edge or on it', () => {
    fc.assert(
      fc.property(points, (all) => {
        for (const [a, b] of edges(hull(all))) {
          for (const p of all) expect((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test('is its own hull', () => {
    fc.assert(
      fc.property(points, (all) => {
        expect(hull(hull(all))).toEqual(hull(all));
      }),
    );
  });
});
