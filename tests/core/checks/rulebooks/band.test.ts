import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BAND_TOLERANCE, isInBand, nearestAllowed } from '../../../../src/core/checks/rulebooks/band.ts';

const LOPE = { least: 6, most: 7, multiples: true } as const;

describe('a band', () => {
  test.each([
    [{ least: 3, most: 4 }, 3, true],
    [{ least: 3, most: 4 }, 4, true],
    [{ least: 3, most: 4 }, 2.9, false],
    [{ least: 3, most: 4 }, 4.1, false],
    [{ least: 3, most: 4 }, 6.5, false],
    [{ least: 3 }, 300, true],
    [{ least: 3 }, 2.99, false],
    [{ most: 4 }, 0, true],
    [{ most: 4 }, 4.01, false],
    [{}, 12, true],
    [LOPE, 6.5, true],
    [LOPE, 13, true],
    [LOPE, 10, false],
    [LOPE, 15, false],
    [LOPE, 0, false],
    // From six on, one multiple reaches the next: 36 … 42, 42 … 49.
    [LOPE, 42.5, true],
  ] as const)('%j holds %d: %s', (band, value, holds) => {
    expect(isInBand(band, value)).toBe(holds);
  });

  test('forgives less than anyone can tape, and no more', () => {
    expect(isInBand({ least: 1 }, 1 - BAND_TOLERANCE / 2)).toBe(true);
    expect(isInBand({ least: 1 }, 1 - 2 * BAND_TOLERANCE)).toBe(false);
  });
});

describe('the nearest allowed values', () => {
  test.each([
    [{ least: 3, most: 4 }, 2, [3]],
    [{ least: 3, most: 4 }, 9, [4]],
    [{ least: 3 }, 1, [3]],
    [{ most: 4 }, 5, [4]],
    [LOPE, 10, [12, 7]],
    [LOPE, 8, [7, 12]],
    [LOPE, 1, [6]],
    [LOPE, 15, [14, 18]],
  ] as const)('of %j to %d are %j, the nearest first', (band, value, nearest) => {
    expect(nearestAllowed(band, value)).toEqual(nearest);
  });

  test('are allowed, and nothing between them and the value is', () => {
    const bands = fc.record({
      least: fc.double({ min: 0.3, max: 3, noNaN: true }),
      over: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    fc.assert(
      fc.property(
        bands,
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (b, value, t) => {
          const band = { least: b.least, most: b.least + b.over, multiples: true } as const;
          for (const near of nearestAllowed(band, value)) {
            expect(isInBand(band, near)).toBe(true);
            const between = value + (near - value) * t;
            if (Math.abs(between - near) > 2 * BAND_TOLERANCE && !isInBand(band, value))
              expect(isInBand(band, between)).toBe(false);
          }
        },
      ),
    );
  });
});
