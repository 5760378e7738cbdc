import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { STOCK_HORSE } from '../../../src/core/horses/horses.ts';
import { pathFrom } from '../../../src/core/plane/path.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { pathCost, type RouteContext } from '../../../src/core/ride/collision-cost.ts';
import { ARENA, obstacle, pole } from './hand-laid.ts';

const LYING = placedObstacle(obstacle('pole', pose(20, 10, Math.PI / 2), [pole('only', pose(0, 0, 0))], []));
const OPEN: RouteContext = { arena: ARENA, obstacles: [], horse: STOCK_HORSE, fromEnd: undefined, toEnd: undefined };

function straight(y: number, from = 10, length = 20) {
  return pathFrom(pose(from, y, 0), [{ length, curvature: 0 }]);
}

describe('a way between obstacles', () => {
  test('in the open is clean', () => {
    expect(pathCost(straight(15), OPEN)).toMatchObject({ penalty: 0, hits: [] });
  });

  test('costs more the nearer the wall it goes within half a metre, and most outside', () => {
    const costs = [0.6, 0.4, 0.1, -0.1, -2].map((y) => pathCost(straight(y), OPEN).penalty);
    expect(costs[0]).toBe(0);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
    expect(new Set(costs).size).toBe(5);
  });

  test('over a pole of another obstacle meets it; a hoof’s room past its end it does not', () => {
    const around = { ...OPEN, obstacles: [LYING] };
    expect(pathCost(straight(10), around).hits).toEqual([LYING]);
    // The pole is 12 ft long: its end is 1.8288 m from its middle.
    expect(pathCost(straight(10 + 1.8288 + 0.2), around).hits).toEqual([LYING]);
    expect(pathCost(straight(10 + 1.8288 + 0.3), around).hits).toEqual([]);
  });

  test('may end on the pole it comes to, and come from it, but not cross it on the way', () => {
    const end = { obstacle: 'pole', piece: 'pole/only' };
    const around = { ...OPEN, obstacles: [LYING] };
    expect(pathCost(straight(10, 10, 10), { ...around, toEnd: end }).hits).toEqual([]);
    expect(pathCost(straight(10, 20, 10), { ...around, fromEnd: end }).hits).toEqual([]);
    expect(pathCost(straight(10), { ...around, toEnd: end }).hits).toEqual([LYING]);
    expect(pathCost(straight(10), { ...around, fromEnd: end }).hits).toEqual([LYING]);
  });
});
