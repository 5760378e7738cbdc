import { describe, expect, test } from 'vitest';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import { pathEnd, sampled } from '../../../src/core/plane/path.ts';
import { distance } from '../../../src/core/plane/point.ts';
import { pose } from '../../../src/core/plane/pose.ts';
import { detours } from '../../../src/core/ride/detour.ts';
import { run } from './hand-laid.ts';

describe('a way round', () => {
  const inTheWay = placedObstacle(run('run', pose(20, 10, 0)));
  const [begin, finish] = [pose(10, 10, 0), pose(30, 10, 0)];
  const ways = detours({ begin, finish }, [inTheWay], 2);

  test('is offered for each corner of what is in the way', () => {
    expect(ways).toHaveLength(4);
    for (const { path, length } of ways) {
      expect(distance(pathEnd(path), finish)).toBeLessThan(1e-6);
      expect(length).toBeGreaterThan(20);
    }
  });

  test('passes its corner a metre outside', () => {
    const { minX, minY } = inTheWay.bounds;
    const [first] = ways;
    const nearest = Math.min(
      ...sampled(first?.path ?? [], 0.01).map((each) => distance(each, { x: minX - 1, y: minY - 1 })),
    );
    expect(nearest).toBeLessThan(0.01);
  });
});
