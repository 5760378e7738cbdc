import { describe, expect, test } from 'vitest';
import { blankCourse } from '../../../src/core/course/blank.ts';
import { point } from '../../../src/core/plane/point.ts';
import { survey } from '../../../src/core/survey.ts';
import { pieceUnderPoint } from '../../../src/desk/selection/hit.ts';
import { withObstacle } from '../three-obstacles.ts';

/** A bridge at (20, 10) and a plant standing at its end; a run at (30, 10). */
function ground() {
  const bridge = withObstacle(blankCourse(), 'bridge-1', { x: 20, y: 10 });
  const { bounds } = survey(bridge).obstacles[0] ?? { bounds: { maxX: 0 } };
  const plant = withObstacle(bridge, 'scenery-1', { x: bounds.maxX - 0.1, y: 10 });
  return { end: bounds.maxX, found: survey(withObstacle(plant, 'run-1', { x: 30, y: 10 })) };
}

describe('what lies under the finger', () => {
  test('is what stands, where that stands on what is walked on', () => {
    const { found, end } = ground();
    expect(pieceUnderPoint(found, point(end - 0.1, 10), 0.3)?.obstacle).toBe('scenery-1');
    expect(pieceUnderPoint(found, point(20, 10), 0.3)?.obstacle).toBe('bridge-1');
  });

  test('is the nearest of two poles', () => {
    const { found } = ground();
    const [a, b] = found.pieces.filter((piece) => piece.obstacle === 'run-1');
    const third = ((a?.pose.x ?? 0) * 2 + (b?.pose.x ?? 0)) / 3;
    expect(pieceUnderPoint(found, point(third, 10), 2)?.key).toBe('run-1/pole-1');
  });

  test('is nothing farther than the reach from every footprint', () => {
    expect(pieceUnderPoint(ground().found, point(45, 25), 0.3)).toBeNull();
  });
});
