import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsIntersect } from '../../../src/core/plane/ring.ts';
import { survey } from '../../../src/core/survey.ts';
import { freeShift, inwardShift } from '../../../src/desk/placing/free-space.ts';
import { shiftBounds } from '../../../src/desk/selection/selection.ts';
import { threeObstacles } from '../three-obstacles.ts';

const { course, obstacles } = survey(threeObstacles());
const { arena } = course;

describe('free ground', () => {
  test('is inside the arena and clear of everything', () => {
    const metres = fc.double({ min: -20, max: 80, noNaN: true });
    const size = fc.double({ min: 0.1, max: 6, noNaN: true });
    fc.assert(
      fc.property(metres, metres, size, (x, y, side) => {
        const bounds = { minX: x, minY: y, maxX: x + side, maxY: y + side };
        const shift = freeShift(bounds, arena, obstacles);
        if (shift === null) throw new Error('this arena has room');
        const there = shiftBounds(bounds, shift.x, shift.y);
        expect(inwardShift(there, arena)).toEqual({ x: expect.closeTo(0, 9), y: expect.closeTo(0, 9) });
        for (const other of obstacles) expect(boundsIntersect(there, other.bounds, 0.6)).toBe(false);
      }),
    );
  });

  test('that is free already is where it is', () => {
    const bounds = { minX: 55, minY: 25, maxX: 57, maxY: 27 };
    expect(freeShift(bounds, arena, obstacles)).toEqual({ x: 0, y: 0 });
  });

  test('does not exist for what is larger than the arena with something in it', () => {
    expect(freeShift({ minX: 0, minY: 0, maxX: 60, maxY: 30 }, arena, obstacles)).toBeNull();
  });
});
