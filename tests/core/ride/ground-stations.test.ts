import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { normalizeAngle, pose } from '../../../src/core/plane/pose.ts';
import { groundStations } from '../../../src/core/ride/ground-stations.ts';
import { obstacle, pole } from './hand-laid.ts';

describe('a station on the ground', () => {
  const lying = placedObstacle(
    obstacle(
      'pole',
      pose(10, 5, Math.PI / 2),
      [pole('only', pose(2, 0, 0))],
      [
        { kind: 'cross', piece: 'only', fraction: 0.75, way: 1 },
        { kind: 'cross', piece: 'only', fraction: 0, way: -1 },
        { kind: 'reach', piece: 'only', pose: pose(1, 0.5, Math.PI), move: 'back' },
        { kind: 'cross', piece: 'gone', fraction: 0.5, way: 1 },
      ],
    ),
  );
  const [passage] = lying.obstacle.passages;
  const [quarter, start, back, gone] = passage === undefined ? [] : groundStations(lying, passage);

  test('over a pole lies at its fraction along, square to it, towards its +y side for way 1', () => {
    if (quarter?.kind !== 'cross' || start?.kind !== 'cross') throw new Error('the stations are crossings');
    // The pole runs along +y on the ground about (10, 7); its +y side is to the west.
    expect(quarter.pose.x).toBeCloseTo(10, 12);
    expect(quarter.pose.y).toBeCloseTo(7 + 3 * FOOT, 12);
    expect(Math.abs(normalizeAngle(quarter.pose.angle))).toBeCloseTo(Math.PI, 12);
    expect(start.pose.y).toBeCloseTo(7 - 6 * FOOT, 12);
    expect(normalizeAngle(start.pose.angle)).toBeCloseTo(0, 12);
  });

  test('at a pose is carried by its piece', () => {
    if (back?.kind !== 'reach') throw new Error('the station is a reach');
    expect(back.move).toBe('back');
    expect(back.pose.x).toBeCloseTo(9.5, 12);
    expect(back.pose.y).toBeCloseTo(8, 12);
    expect(normalizeAngle(back.pose.angle)).toBeCloseTo(-Math.PI / 2, 12);
  });

  test('on a piece that is gone says which', () => {
    expect(gone).toEqual({ kind: 'missing', piece: 'gone' });
  });
});
