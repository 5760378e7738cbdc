/** The line over every way of every obstacle kind, as built and as its mirror image. */
import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { minTurnRadius } from '../../../src/core/horses/turns.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { pathEnd } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { normalizeAngle, pose } from '../../../src/core/plane/pose.ts';
import { type PassageLine, passageLine } from '../../../src/core/ride/passage-line.ts';

function usual(kind: string, side: 1 | -1): Obstacle {
  const obstacle = buildObstacle(`${kind}-1`, kind, {}, pose(20, 12, 0.7), side);
  if (obstacle.kind === 'infeasible' || !('id' in obstacle)) throw new Error(`${kind} is infeasible as usual`);
  return obstacle;
}

function lineOver(obstacle: Obstacle, id: string): PassageLine {
  const passage = obstacle.passages.find((each) => each.id === id);
  const gait = passage?.gaits[0];
  if (passage === undefined || gait === undefined) throw new Error(`${obstacle.id} has no way ${id}`);
  const line = passageLine(placedObstacle(obstacle), { passage, gait, horse: STOCK_HORSE });
  if (line === undefined) throw new Error(`${obstacle.id} has no line ${id}`);
  return line;
}

const WAYS = OBSTACLE_KINDS.flatMap(({ id }) => usual(id, 1).passages.map((passage) => [id, passage.id] as const));

describe('the line over', () => {
  test('there are ways to try', () => {
    expect(WAYS.length).toBeGreaterThan(20);
  });

  test.each(WAYS)('%s, %s, joins without a gap and keeps the heading except at turns', (kind, way) => {
    const line = lineOver(usual(kind, 1), way);
    expect(line.breaks).toEqual([]);
    let here = line.start;
    for (const { path, facing, turn, move } of line.elements) {
      const first = path[0]?.start ?? here;
      expect(distance(first, here)).toBeLessThan(1e-6);
      // Where the horse faces is the path's heading with `facing` added.
      expect(Math.abs(normalizeAngle(first.angle + facing - here.angle))).toBeLessThan(1e-6);
      if (move !== 'turn') expect(turn).toBe(0);
      const end = pathEnd(path);
      here = { ...end, angle: end.angle + facing + turn };
    }
    expect(distance(here, line.end)).toBeLessThan(1e-6);
    expect(Math.abs(normalizeAngle(here.angle - line.end.angle))).toBeLessThan(1e-6);
  });

  test.each(WAYS)('%s, %s, crosses square and turns no tighter than its gait as usual', (kind, way) => {
    const line = lineOver(usual(kind, 1), way);
    for (const { skew } of line.crossings) expect(Math.abs(skew)).toBeLessThan(1e-6);
    for (const { path, move, gait } of line.elements) {
      if (move !== 'ride') continue;
      const least = minTurnRadius(STOCK_HORSE, gait);
      for (const { curvature } of path) expect(Math.abs(curvature)).toBeLessThanOrEqual(1 / least + 1e-6);
    }
  });

  test.each(WAYS)('%s, %s, is as long and as slow in the mirror', (kind, way) => {
    const [here, there] = [lineOver(usual(kind, 1), way), lineOver(usual(kind, -1), way)];
    const numbers = (line: PassageLine) =>
      line.elements.flatMap(({ length, seconds, turn }) => [length, seconds, Math.abs(turn)]);
    expect(numbers(there)).toHaveLength(numbers(here).length);
    for (const [i, value] of numbers(here).entries()) expect(numbers(there)[i]).toBeCloseTo(value, 6);
    expect(there.elements.map(({ turn }) => Math.sign(turn) + 0)).toEqual(
      here.elements.map(({ turn }) => -Math.sign(turn) + 0),
    );
  });
});
