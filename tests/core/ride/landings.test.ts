import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Sourced } from '../../../src/core/horses/horse.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { landingFractions, spacing } from '../../../src/core/ride/landings.ts';

const LOPE: Sourced = { value: 6.5 * FOOT, least: 6 * FOOT, most: 7 * FOOT, source: 'made for this test', grade: 'E' };

describe('landings in a gap', () => {
  test.each([
    [6, 1, 6],
    [7, 1, 7],
    [12, 2, 6],
    [13, 2, 6.5],
    [18, 3, 6],
    [21, 3, 7],
  ])('%f ft take %i landings of %f ft at 6 to 7 ft', (gap, count, each) => {
    const found = spacing(gap * FOOT, LOPE);
    expect(found).toMatchObject({ fits: true, count, nearest: [] });
    expect(found.each).toBeCloseTo(each * FOOT, 12);
  });

  test.each([
    [5, 1, [6]],
    [9, 1, [7, 12]],
    [10, 2, [7, 12]],
    [15, 2, [14, 18]],
    [17, 3, [14, 18]],
  ])('%f ft take none; %i is nearest and %j ft would do', (gap, count, nearest) => {
    const found = spacing(gap * FOOT, LOPE);
    expect(found).toMatchObject({ fits: false, count });
    expect(found.nearest.map((each) => Math.round((each / FOOT) * 1e6) / 1e6)).toEqual(nearest);
  });

  test('the named gaps do fit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 15, noNaN: true }), (gap) => {
        const found = spacing(gap, LOPE);
        expect(found.count).toBeGreaterThanOrEqual(1);
        for (const each of found.nearest) expect(spacing(each, LOPE).fits).toBe(true);
        if (!found.fits) expect(found.nearest.length).toBeGreaterThan(0);
      }),
    );
  });

  test('are even, half of one in from either end', () => {
    expect(landingFractions(3)).toEqual([1 / 6, 1 / 2, 5 / 6]);
    expect(landingFractions(1)).toEqual([0.5]);
  });

  test('a band that holds nothing is refused with both values', () => {
    expect(() => spacing(2, { ...LOPE, least: 3, most: 2 })).toThrow(/3 … 2/);
  });
});
