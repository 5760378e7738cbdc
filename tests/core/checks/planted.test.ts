import { describe, expect, test } from 'vitest';
import { PLANTS, planted } from './planted.ts';
import { findings } from './scene.ts';

const COURSES = 300;
const SEEDS = PLANTS.map((plant, first) => ({
  check: plant.check,
  seeds: Array.from({ length: Math.ceil((COURSES - first) / PLANTS.length) }, (_, i) => first + i * PLANTS.length),
}));

describe('300 random courses with one planted fault each', () => {
  test('are 300', () => {
    expect(SEEDS.reduce((sum, { seeds }) => sum + seeds.length, 0)).toBe(COURSES);
  });

  test.each(SEEDS)(
    '$check is found, with nothing else that is new, and is not there without it',
    ({ check, seeds }) => {
      for (const seed of seeds) {
        const { right, wrong } = planted(seed);
        const before = findings(right);
        expect(
          before.filter((each) => each.check === check).map(({ says }) => says),
          `seed ${seed}`,
        ).toEqual([]);
        const known = new Set(before.map(({ id }) => id));
        const fresh = findings(wrong).filter(({ id }) => !known.has(id));
        expect(
          fresh.filter((each) => each.check !== check).map(({ says }) => says),
          `seed ${seed}`,
        ).toEqual([]);
        expect(fresh.length, `seed ${seed}`).toBeGreaterThan(0);
      }
    },
  );
});
