import { describe, expect, test } from 'vitest';
import type { Camera } from '../../../../src/app/arena/camera.ts';
import { dimensionLabels, labelBox, poleDots } from '../../../../src/app/arena/overlays/dimension-places.ts';
import { keptConstraints } from '../../../../src/desk/constraints/kept-list.ts';
import { createDesk } from '../../../../src/desk/editor.ts';
import { chosenPieces } from '../../../../src/desk/selection/selection.ts';
import { threeObstacles } from '../../../desk/three-obstacles.ts';

const SIZE = { width: 800, height: 600 };

function labels(key: string, camera: Camera, taken: Parameters<typeof dimensionLabels>[2]['taken'] = []) {
  const desk = createDesk(threeObstacles());
  desk.choose([key]);
  const { survey, chosen } = desk.state();
  const kept = keptConstraints({ survey, chosen }).filter((each) => each.dimensions.length > 0);
  return dimensionLabels(kept, camera, { size: SIZE, dots: poleDots(chosenPieces(survey, chosen), camera), taken });
}

/** The place on the ground in the middle of the picture. */
function eye(scale: number, x: number, y: number): Camera {
  return { scale, x: SIZE.width / 2 - x * scale, y: SIZE.height / 2 + y * scale, turned: false };
}

describe('the numbers on tapes', () => {
  test('are one for all alike where they would cover one another, and each its own where there is room', () => {
    expect(labels('run-1', eye(10, 15, 9)).map(({ text, keys }) => [text, keys.length])).toEqual([[`3 × 3'`, 3]]);
    expect(labels('run-1', eye(90, 15, 9)).map(({ text, keys }) => [text, keys.length])).toEqual([
      [`3'`, 1],
      [`3'`, 1],
      [`3'`, 1],
    ]);
  });

  test.each([6, 12, 25, 60])(
    'never cover one another or what is taken, inside the picture, at %d pixels a metre',
    (scale) => {
      for (const [key, x, y] of [
        ['run-1', 15, 9],
        ['fan-1', 30, 20],
        ['spoke-1', 46, 9],
      ] as const) {
        const taken = [{ minX: 380, maxX: 420, minY: 280, maxY: 320 }];
        const boxes = [...taken, ...labels(key, eye(scale, x, y), taken).map(labelBox)];
        boxes.forEach((a, i) => {
          if (i > 0) expect(a.minX >= 0 && a.maxX <= SIZE.width && a.minY >= 0 && a.maxY <= SIZE.height).toBe(true);
          for (const b of boxes.slice(i + 1)) {
            expect(a.maxX <= b.minX || b.maxX <= a.minX || a.maxY <= b.minY || b.maxY <= a.minY, key).toBe(true);
          }
        });
      }
    },
  );

  test('that are out of the picture are left out', () => {
    expect(labels('run-1', eye(10, 300, 9))).toEqual([]);
  });
});
