import { describe, expect, test } from 'vitest';
import { loupePlace, loupeWords } from '../../../../src/app/arena/overlays/loupe.tsx';
import { createDesk } from '../../../../src/desk/editor.ts';
import { threeObstacles } from '../../../desk/three-obstacles.ts';

const SIZE = { width: 390, height: 420 };
/** Half of its side, pixels. */
const HALF = 66;

describe('the loupe', () => {
  test('stands above the finger, beside it near the top, and always inside the picture', () => {
    expect(loupePlace({ x: 200, y: 300 }, SIZE)).toEqual({ x: 200, y: 172 });
    for (const x of [0, 60, 195, 330, 390]) {
      for (const y of [0, 60, 150, 420]) {
        const at = loupePlace({ x, y }, SIZE);
        expect(at.x - HALF).toBeGreaterThanOrEqual(0);
        expect(at.x + HALF).toBeLessThanOrEqual(SIZE.width);
        expect(at.y - HALF).toBeGreaterThanOrEqual(0);
        expect(at.y + HALF).toBeLessThanOrEqual(SIZE.height);
        expect(Math.hypot(at.x - x, at.y - y)).toBeGreaterThan(HALF - 10);
      }
    }
  });

  test('tells the gaps beside a pole, and of a whole obstacle the nearest walls', () => {
    const desk = createDesk(threeObstacles());
    desk.choose(['run-1/pole-2']);
    const print = (far: number) => far.toFixed(2);
    expect(loupeWords(desk.state(), print)).toMatch(/^\d\.\d\d · \d\.\d\d$/);
    desk.choose(
      desk
        .state()
        .survey.obstacles.slice(-1)
        .map(({ obstacle }) => obstacle.id),
    );
    expect(loupeWords(desk.state(), print)).toMatch(/ (west|east) · .+ (south|north)$/);
  });
});
