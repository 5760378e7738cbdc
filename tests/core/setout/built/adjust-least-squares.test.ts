import '../../../property-seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leastSquares, type ObservationEquation } from '../../../../src/core/setout/built/adjust-least-squares.ts';

/** A straight equation: the sum of slopes times unknowns. */
function straight(slopes: readonly number[], observed: number, sigma: number): ObservationEquation {
  return {
    unknowns: slopes.map((_, i) => i),
    observed,
    sigma,
    at: (values) => ({
      value: slopes.reduce((sum, slope, i) => sum + slope * (values[i] as number), 0),
      gradient: slopes,
    }),
  };
}

const slope = fc.double({ min: -2, max: 2, noNaN: true });
const drawn = fc.array(
  fc.tuple(slope, slope, fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0.1, max: 2, noNaN: true })),
  { minLength: 1, maxLength: 8 },
);

/** Two that determine both unknowns, and some more. */
function equations(more: readonly (readonly [number, number, number, number])[], scale = 1) {
  const all = [[1, 0, 0.3, 1] as const, [0, 1, -0.2, 1] as const, ...more];
  return all.map(([a, b, observed, sigma]) => straight([a, b], observed, scale * sigma));
}

describe('least squares', () => {
  test('a mean weighted by hand: 1 of weight 1 and 4 of weight 4 make 3.4', () => {
    const found = leastSquares([0], [straight([1], 1, 1), straight([1], 4, 0.5)]);
    expect(found.values[0]).toBeCloseTo(3.4, 12);
    expect(found.covariance[0]?.[0]).toBeCloseTo(0.2, 12);
    expect(found.residuals.map(({ redundancy }) => redundancy.toFixed(2))).toEqual(['0.80', '0.20']);
    // 2.4² / 1 + 0.6² / 0.25.
    expect(found.sum).toBeCloseTo(7.2, 12);
    expect(found.isSettled).toBe(true);
  });

  test('with all standard errors larger by one factor, only the errors are', () => {
    fc.assert(
      fc.property(drawn, fc.double({ min: 0.2, max: 5, noNaN: true }), (more, scale) => {
        const [found, scaled] = [leastSquares([0, 0], equations(more)), leastSquares([0, 0], equations(more, scale))];
        for (const i of [0, 1]) {
          expect(scaled.values[i]).toBeCloseTo(found.values[i] ?? 9, 6);
          expect(scaled.covariance[i]?.[i]).toBeCloseTo(scale ** 2 * (found.covariance[i]?.[i] ?? 9), 6);
        }
        for (const [i, { redundancy, residual }] of scaled.residuals.entries()) {
          expect(redundancy).toBeCloseTo(found.residuals[i]?.redundancy ?? 9, 6);
          expect(residual).toBeCloseTo(found.residuals[i]?.residual ?? 9, 6);
        }
      }),
    );
  });

  test('redundancy numbers add up to the equations less the unknowns', () => {
    fc.assert(
      fc.property(drawn, (more) => {
        const { residuals } = leastSquares([0, 0], equations(more));
        expect(residuals.reduce((sum, { redundancy }) => sum + redundancy, 0)).toBeCloseTo(more.length, 6);
      }),
    );
  });

  test('a blunder shows in its own residual by its redundancy, and its w² is what the sum falls by without it', () => {
    fc.assert(
      fc.property(drawn, (more) => {
        const all = equations(more);
        const before = leastSquares([0, 0], all);
        const [first, second, third, ...rest] = all;
        if (first === undefined || second === undefined || third === undefined) return;
        const off = { ...third, observed: third.observed + 1 };
        const after = leastSquares([0, 0], [first, second, off, ...rest]);
        const shown = (before.residuals[2]?.residual ?? 9) - (after.residuals[2]?.residual ?? 9);
        expect(shown).toBeCloseTo(before.residuals[2]?.redundancy ?? 9, 6);
        const without = leastSquares([0, 0], [first, second, ...rest]);
        if ((before.residuals[2]?.redundancy ?? 0) < 1e-3) return;
        expect(after.sum - without.sum).toBeCloseTo((after.residuals[2]?.w ?? 9) ** 2, 5);
      }),
    );
  });

  test('what is not determined is a mistake', () => {
    expect(() => leastSquares([0, 0], [straight([1, 1], 1, 1), straight([2, 2], 2, 1)])).toThrow(
      'do not determine unknown 1',
    );
  });
});
