import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { intersection, overlapArea, unionRings } from '../../../src/core/plane/clip.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { rectangle, ringArea, ringContains, transformRing } from '../../../src/core/plane/ring.ts';

const POLE = rectangle(4, 0.1);

describe('what two rings share', () => {
  test('poles crossed at a right angle share their square', () => {
    const shared = intersection(POLE, transformRing(POLE, pose(1, 0, Math.PI / 2)));
    expect(shared).toHaveLength(1);
    // Both sides are snapped to 1/1024 inch.
    expect(overlapArea(POLE, transformRing(POLE, pose(1, 0, Math.PI / 2)))).toBeCloseTo(0.01, 5);
  });

  test('poles that touch along an edge, or are apart, share nothing', () => {
    expect(intersection(POLE, transformRing(POLE, pose(0, 0.1, 0)))).toEqual([]);
    expect(intersection(POLE, transformRing(POLE, pose(9, 9, 0)))).toEqual([]);
  });

  test('a ring shares all of itself with itself', () => {
    expect(overlapArea(POLE, POLE)).toBeCloseTo(0.4, 3);
  });

  test('a line or nothing shares nothing', () => {
    expect(intersection(POLE, POLE.slice(0, 2))).toEqual([]);
    expect(intersection([], POLE)).toEqual([]);
  });

  test('poles laid end to end and at corners never make it throw, and it is the same from either side', () => {
    const nearly = fc.double({ min: -1e-9, max: 1e-9, noNaN: true });
    const corner = fc.constantFrom(
      pose(4, 0, 0),
      pose(2, 2, Math.PI / 2),
      pose(-2, -2, Math.PI / 2),
      pose(0, 0.1, Math.PI),
    );
    fc.assert(
      fc.property(corner, nearly, nearly, (at, dx, turn) => {
        const other = transformRing(POLE, { x: at.x + dx, y: at.y, angle: at.angle + turn });
        expect(overlapArea(POLE, other)).toBeCloseTo(overlapArea(other, POLE), 6);
      }),
    );
  });

  test('the middle of what is shared is in both', () => {
    const where = fc.record({
      x: fc.double({ min: -1, max: 1, noNaN: true }),
      y: fc.double({ min: -1, max: 1, noNaN: true }),
      angle: fc.double({ min: 0.1, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(where, (at) => {
        const other = transformRing(rectangle(2, 0.5), at);
        for (const ring of intersection(rectangle(3, 1), other)) {
          const x = ring.reduce((sum, each) => sum + each.x, 0) / ring.length;
          const y = ring.reduce((sum, each) => sum + each.y, 0) / ring.length;
          expect(ringContains(rectangle(3.001, 1.001), { x, y })).toBe(true);
          expect(ringContains(transformRing(rectangle(2.001, 0.501), at), { x, y })).toBe(true);
        }
      }),
    );
  });
});

describe('rings joined', () => {
  const square = rectangle(2, 2);

  test('two squares that share a quarter cover seven quarters, those apart stay two', () => {
    const [one, ...others] = unionRings([square, transformRing(square, pose(1, 1))]);
    expect(others).toEqual([]);
    expect(Math.abs(ringArea(one ?? []))).toBeCloseTo(7, 4);
    expect(unionRings([square, transformRing(square, pose(9, 0))])).toHaveLength(2);
  });

  test('a row of many is one strip, whatever their order; nothing is nothing', () => {
    const row = Array.from({ length: 41 }, (_, i) => transformRing(square, pose(i, 0)));
    for (const rings of [row, row.toReversed(), [...row, ...row]]) {
      const [strip, ...others] = unionRings(rings);
      expect(others).toEqual([]);
      expect(Math.abs(ringArea(strip ?? []))).toBeCloseTo(84, 3);
    }
    expect(unionRings([])).toEqual([]);
    expect(unionRings([square])[0]).toHaveLength(4);
  });
});
