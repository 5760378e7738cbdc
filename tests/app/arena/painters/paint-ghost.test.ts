import { expect, test } from 'vitest';
import type { Camera } from '../../../../src/app/arena/camera.ts';
import { GHOST_DASHES, type OriginArrow, originPlates } from '../../../../src/app/arena/painters/paint-ghost.ts';
import { boundsIntersect } from '../../../../src/core/plane/ring.ts';

const CAMERA: Camera = { scale: 12, x: 40, y: 560, turned: false };
const SIZE = { width: 860, height: 620 };

function arrow(from: readonly [number, number], to: readonly [number, number], index: 0 | 1): OriginArrow {
  const [[x, y], [u, v]] = [from, to];
  return { from: { x, y, angle: 0 }, to: { x: u, y: v, angle: 0 }, words: `12' 3½", turned 34.4°`, index };
}

test('the two ghosts are told apart without their colours', () => {
  expect(new Set(GHOST_DASHES.map((dash) => dash.join(' '))).size).toBe(2);
});

test.each([
  ['apart', arrow([10, 10], [20, 10], 0), arrow([20, 30], [20, 12], 1)],
  ['to one place', arrow([30, 20], [34, 24], 0), arrow([36, 18], [34, 24], 1)],
  ['at a wall', arrow([1, 1], [3, 2], 0), arrow([1, 4], [3, 2], 1)],
])('the words of two arrows %s lie apart, in the picture', (_, first, second) => {
  const [a, b] = originPlates([first, second], { camera: CAMERA, size: SIZE, kept: [] });
  if (a === undefined || b === undefined) throw new Error('each arrow has its words');
  expect(boundsIntersect(a, b, 0)).toBe(false);
  for (const plate of [a, b]) {
    expect(plate.minX).toBeGreaterThanOrEqual(0);
    expect(plate.maxX).toBeLessThanOrEqual(SIZE.width);
    expect(plate.minY).toBeGreaterThanOrEqual(0);
    expect(plate.maxY).toBeLessThanOrEqual(SIZE.height);
  }
});

test('words keep off the thing that they are about', () => {
  const thing = { minX: 300, maxX: 360, minY: 200, maxY: 260 };
  const about = arrow([24, 24], [24.3, 25], 0);
  const [plate] = originPlates([about], { camera: CAMERA, size: SIZE, kept: [thing] });
  if (plate === undefined) throw new Error('the arrow has its words');
  expect(boundsIntersect(plate, thing, 0)).toBe(false);
});
