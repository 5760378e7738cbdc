import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Camera, centreCamera, fitCamera, groundOf, screenOf, zoomCamera } from '../../../src/app/arena/camera.ts';
import type { Arena } from '../../../src/core/course/course.ts';

const ARENA: Arena = { title: '', length: 60, width: 30, entrance: { wall: 'west', at: 15, width: 3 } };
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
    { width: 800, height: 660, turned: false },
    { width: 500, height: 900, turned: true },
    { width: 390, height: 380, turned: false },
  ])('fits the whole arena into $width × $height', ({ width, height, turned }) => {
    const camera = fitCamera(ARENA, { width, height });
    expect(camera.turned).toBe(turned);
    for (const corner of [
      { x: 0, y: 0 },
      { x: ARENA.length, y: ARENA.width },
    ]) {
      const { x, y } = screenOf(camera, corner);
      expect(x).toBeGreaterThan(20);
      expect(x).toBeLessThan(width - 20);
      expect(y).toBeGreaterThan(20);
      expect(y).toBeLessThan(height - 20);
    }
  });

  test('brings a place to the middle', () => {
    const camera = centreCamera({ scale: 20, x: 0, y: 0, turned: true }, { x: 5, y: 6 }, { width: 400, height: 300 });
    expect(screenOf(camera, { x: 5, y: 6 })).toEqual({ x: 200, y: 150 });
  });
});
