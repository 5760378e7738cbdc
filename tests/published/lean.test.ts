/** Lean and radius against circles that are ridden. */
import { describe, expect, test } from 'vitest';
import { GAITS } from '../../src/core/horses/horse.ts';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
import { leanAtRadius, minTurnRadius, preferredTurnRadius, radiusAtLean } from '../../src/core/horses/turns.ts';

const DEGREE = Math.PI / 180;

/** atan(v²/(g·R)) in degrees by speed, m/s, on circles of 6, 8, 10, 15 and 20 m across: a table worked out by hand. */
const LEANS: readonly (readonly [number, readonly number[]])[] = [
  [1.5, [4.4, 3.3, 2.6, 1.8, 1.3]],
  [2.2, [9.3, 7.0, 5.6, 3.8, 2.8]],
  [2.5, [12.0, 9.0, 7.3, 4.9, 3.6]],
  [3.5, [22.6, 17.3, 14.0, 9.5, 7.1]],
  [5.0, [40.3, 32.5, 27.0, 18.8, 14.3]],
];
const ACROSS = [6, 8, 10, 15, 20];

describe('the lean', () => {
  test.each(LEANS)('at %s m/s is the table’s on every circle', (speed, row) => {
    for (const [i, degrees] of row.entries()) {
      expect(Math.abs(leanAtRadius(speed, (ACROSS[i] ?? 0) / 2) / DEGREE - degrees)).toBeLessThan(0.06);
    }
  });

  // Sizes: dressage definition of the volte (6, 8, 10 m) and the usual 20 m circle. Speeds: Clayton 1994, from memory.
  test.each([
    ['a 6 m volte at a collected canter', 3.27, 6, 20.0],
    ['an 8 m volte at a canter', 3.6, 8, 18.3],
    ['a 10 m volte at a collected trot', 3.2, 10, 11.8],
    ['a 20 m circle at a working canter', 3.91, 20, 8.9],
  ])('on %s is what is ridden there', (_, speed, across, degrees) => {
    expect(Math.abs(leanAtRadius(speed, across / 2) / DEGREE - degrees)).toBeLessThan(0.1);
  });

  test.each([
    [10, 0.578],
    [20, 0.28],
  ])('of %s degrees is a radius of so many times the speed squared', (degrees, factor) => {
    expect(radiusAtLean(1, degrees * DEGREE)).toBeCloseTo(factor, 3);
    expect(radiusAtLean(2.9, degrees * DEGREE)).toBeCloseTo(factor * 2.9 ** 2, 1);
  });

  test('and the radius undo each other', () => {
    for (const radius of [1.5, 3, 10]) expect(radiusAtLean(2.5, leanAtRadius(2.5, radius))).toBeCloseTo(radius, 12);
  });
});

describe('the stock horse', () => {
  test('turns easily on about 10 degrees and never leans more than 20', () => {
    for (const gait of GAITS) {
      const { stride, period } = STOCK_HORSE.gaits[gait];
      const speed = stride.value / period.value;
      expect(leanAtRadius(speed, preferredTurnRadius(STOCK_HORSE, gait)) / DEGREE).toBeCloseTo(10, 1);
      // A jog round the markers of a serpentine leans more than any schooling figure: it has its own source.
      if (gait === 'lope') expect(leanAtRadius(speed, minTurnRadius(STOCK_HORSE, gait)) / DEGREE).toBeLessThan(20);
    }
  });

  /**
   * American Mule Association rule 216: jog serpentine, markers 10 ft apart, guard rails 4 ft to either side. A sine of
   * that wavelength, 0.5 to 0.75 m off the markers, bends on 1/(A(2π/λ)²).
   */
  test('jogs the serpentine of markers 10 ft apart', () => {
    const bend = (aside: number) => 1 / (aside * ((2 * Math.PI) / (2 * 10 * 0.3048)) ** 2);
    const least = minTurnRadius(STOCK_HORSE, 'jog');
    expect(bend(0.75)).toBeLessThan(least);
    expect(bend(0.5)).toBeGreaterThan(least);
  });
});
