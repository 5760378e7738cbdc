import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  arenaFurniture,
  type Camera,
  centreCamera,
  fitCamera,
  furnitureBounds,
  groundOf,
  screenOf,
  zoomCamera,
} from '../../../src/app/arena/camera.ts';
import { wayInBox } from '../../../src/app/arena/painters/rail.ts';
import { rulerMarks } from '../../../src/app/arena/painters/rulers.ts';
import type { Arena } from '../../../src/core/course/course.ts';
import { type Bounds, boundsIntersect } from '../../../src/core/plane/ring.ts';

const ARENA: Arena = { title: '', length: 60, width: 30, entrance: { wall: 'west', at: 15, width: 3 } };
function holds(outer: Bounds, { minX, minY, maxX, maxY }: Bounds): boolean {
  return minX >= outer.minX && minY >= outer.minY && maxX <= outer.maxX && maxY <= outer.maxY;
}

const cameras: fc.Arbitrary<Camera> = fc.record({
  scale: fc.double({ min: 2, max: 300, noNaN: true }),
  x: fc.double({ min: -2000, max: 2000, noNaN: true }),
  y: fc.double({ min: -2000, max: 2000, noNaN: true }),
  turned: fc.boolean(),
});
const places = fc.record({
  x: fc.double({ min: -100, max: 100, noNaN: true }),
  y: fc.double({ min: -100, max: 100, noNaN: true }),
});

describe('the camera', () => {
  test('shows north above south, and turned a quarter the east above the west', () => {
    const camera: Camera = { scale: 10, x: 100, y: 500, turned: false };
    expect(screenOf(camera, { x: 3, y: 4 })).toEqual({ x: 130, y: 460 });
    expect(screenOf({ ...camera, turned: true }, { x: 3, y: 4 })).toEqual({ x: 60, y: 470 });
  });

  test('finds the ground under what it shows', () => {
    fc.assert(
      fc.property(cameras, places, (camera, place) => {
        const back = groundOf(camera, screenOf(camera, place));
        expect(back.x).toBeCloseTo(place.x, 6);
        expect(back.y).toBeCloseTo(place.y, 6);
      }),
    );
  });

  test('zooms without moving what is under the pointer', () => {
    fc.assert(
      fc.property(cameras, places, fc.double({ min: 0.1, max: 10, noNaN: true }), (camera, place, factor) => {
        const about = screenOf(camera, place);
        const after = screenOf(zoomCamera(camera, factor, about), place);
        expect(after.x).toBeCloseTo(about.x, 4);
        expect(after.y).toBeCloseTo(about.y, 4);
      }),
    );
  });

  test.each([
    { width: 800, height: 405, turned: false, buttons: 'beside' },
    { width: 800, height: 660, turned: false, buttons: 'below' },
    { width: 500, height: 980, turned: true, buttons: 'below' },
    { width: 390, height: 374, turned: false, buttons: 'below' },
    { width: 540, height: 210, turned: false, buttons: 'beside-in-two' },
  ])('fits the whole arena into $width × $height, clear of the buttons', ({ width, height, turned, buttons }) => {
    const camera = fitCamera(ARENA, { width, height });
    const furniture = arenaFurniture(ARENA, { width, height });
    expect(camera.turned).toBe(turned);
    expect(furniture.buttons).toBe(buttons);
    const picture = { minX: 0, minY: 0, maxX: width, maxY: height };
    const low = screenOf(camera, { x: 0, y: 0 });
    const high = screenOf(camera, { x: ARENA.length, y: ARENA.width });
    const ground = {
      minX: Math.min(low.x, high.x),
      maxX: Math.max(low.x, high.x),
      minY: Math.min(low.y, high.y),
      maxY: Math.max(low.y, high.y),
    };
    const drawn = [ground, wayInBox(ARENA, camera), ...rulerMarks(ARENA, 'ft', camera).map(({ box }) => box)];
    for (const box of drawn) {
      expect(holds(picture, box)).toBe(true);
      expect(boundsIntersect(box, furnitureBounds(furniture, { width, height }), 0)).toBe(false);
    }
    // As large as the picture has room for it: one of the two ways is used but for the margins.
    const fill = Math.max((ground.maxX - ground.minX) / width, (ground.maxY - ground.minY) / (height - 62));
    expect(fill).toBeGreaterThan(0.78);
  });

  test('brings a place to the middle', () => {
    const camera = centreCamera({ scale: 20, x: 0, y: 0, turned: true }, { x: 5, y: 6 }, { width: 400, height: 300 });
    expect(screenOf(camera, { x: 5, y: 6 })).toEqual({ x: 200, y: 150 });
  });
});
