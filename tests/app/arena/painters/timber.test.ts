import { expect, test } from 'vitest';
import type { Camera } from '../../../../src/app/arena/camera.ts';
import { LEAST_WIDTH, seenTimber } from '../../../../src/app/arena/painters/timber.ts';
import { placedObstacle } from '../../../../src/core/course/placed.ts';
import { buildObstacle } from '../../../../src/core/obstacles/build.ts';

function pieces(kind: string, scale: number) {
  const built = buildObstacle(kind, kind, {}, { x: 20, y: 10, angle: 0.4 });
  if ('why' in built) throw new Error(built.why);
  const camera: Camera = { scale, x: 0, y: 400, turned: false };
  return placedObstacle(built).pieces.map((piece) => ({ piece, seen: seenTimber(piece, { camera }) }));
}

test.each([2, 9, 40, 200])('at %d pixels a metre a pole is as wide as it is, and never under three pixels', (scale) => {
  for (const { piece, seen } of pieces('run', scale)) {
    expect(seen?.wide).toBe(Math.max(LEAST_WIDTH, piece.figure.width * scale));
    expect(seen?.long).toBeCloseTo(piece.figure.length * scale, 6);
    expect(seen?.timber.bands.length).toBeGreaterThan(1);
  }
});

test.each([2, 40])('at %d pixels a metre a raised end stands off its shadow, and one that lies does not', (scale) => {
  const lying = pieces('run', scale)[0]?.seen;
  const raised = pieces('raised-run', scale).flatMap(({ seen }) => seen ?? []);
  for (const { lift } of raised) expect(Math.max(...lift)).toBeGreaterThan(Math.max(...(lying?.lift ?? [])) + 2);
  expect(raised.length).toBeGreaterThan(0);
});

test('what is walked over or stands is not drawn as a pole', () => {
  for (const kind of ['bridge', 'gate']) {
    expect(pieces(kind, 20).filter(({ seen }) => seen !== undefined)).toEqual([]);
  }
});
