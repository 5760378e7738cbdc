import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { boundsIntersect } from '../../../src/core/plane/ring.ts';
import { survey } from '../../../src/core/survey.ts';
import { freeShift, inwardShift, roomyShift } from '../../../src/desk/placing/free-space.ts';
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

  test('leaves the usual 24 ft to the next obstacle where the arena has them, half of it where not, and is found in any case', () => {
    const foot = 0.3048;
    const side = 2;
    const [first] = obstacles;
    if (first === undefined) throw new Error('there are three');
    const on = { minX: first.bounds.minX, minY: first.bounds.minY, maxX: 0, maxY: 0 };
    const bounds = { ...on, maxX: on.minX + side, maxY: on.minY + side };
    const shift = roomyShift(bounds, arena, [first]);
    if (shift === null) throw new Error('this arena has room');
    const there = shiftBounds(bounds, shift.x, shift.y);
    expect(boundsIntersect(there, first.bounds, 24 * foot - 1e-6)).toBe(false);
    expect(inwardShift(there, { ...arena, length: arena.length - 2, width: arena.width - 2 })).toEqual({ x: 0, y: 0 });
    const middle = { minX: 9, minY: 9, maxX: 11, maxY: 11 };
    const small = { ...arena, length: 20, width: 20 };
    const crowded = roomyShift(middle, small, [{ ...first, bounds: middle }]);
    if (crowded === null) throw new Error('a small arena has room at its walls');
    expect(boundsIntersect(shiftBounds(middle, crowded.x, crowded.y), middle, 12 * foot - 1e-6)).toBe(false);
    expect(Math.hypot(crowded.x, crowded.y)).toBeLessThan(24 * foot);
    expect(roomyShift({ minX: 0, minY: 0, maxX: 60, maxY: 30 }, arena, obstacles)).toBeNull();
  });

  test('does not exist for what is larger than the arena with something in it', () => {
    expect(freeShift({ minX: 0, minY: 0, maxX: 60, maxY: 30 }, arena, obstacles)).toBeNull();
  });
});
