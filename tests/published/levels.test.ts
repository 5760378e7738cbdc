/**
 * Adjustments by least squares that others have published, done by ours: a level net has straight equations, so that
 * every number can be compared; distances to three known points have bent ones.
 */
import { describe, expect, test } from 'vitest';
import { leastSquares, type ObservationEquation } from '../../src/core/setout/built/adjust-least-squares.ts';

/** From one point to another, so much higher; `sigma` in the same unit. A point without a place among the unknowns is known. */
interface Rise {
  readonly from: number | { readonly height: number };
  readonly to: number | { readonly height: number };
  readonly rise: number;
  readonly sigma: number;
}

function levelled({ from, to, rise, sigma }: Rise): ObservationEquation {
  const known = (end: Rise['from']): number => (typeof end === 'number' ? 0 : end.height);
  const ends = [
    { end: to, slope: 1 },
    { end: from, slope: -1 },
  ].flatMap(({ end, slope }) => (typeof end === 'number' ? [{ end, slope }] : []));
  return {
    unknowns: ends.map(({ end }) => end),
    observed: rise,
    sigma,
    at: (values) => ({
      value: ends.reduce((sum, { end, slope }) => sum + slope * (values[end] as number), known(to) - known(from)),
      gradient: ends.map(({ slope }) => slope),
    }),
  };
}

/**
 * Z. Siki, Level network adjustment and data snooping: github.com/OSGeoLabBp/tutorials,
 * english/data_processing/level_net.rst. Four points, all six levelled; point 4 is known; 0.7 mm a kilometre. The numbers
 * are those printed under "Results": corrections in mm, the statistic U (normal) and the redundancy number r.
 */
describe('a level net of four points, all six levelled', () => {
  const POINT_4 = { height: 101.345 };
  const PRINTED = [
    { from: 0, to: 1, rise: -0.749, km: 1.1, v: 0.81, u: 1.9, r: 0.3 },
    { from: 0, to: 2, rise: -1.274, km: 1.8, v: -2.18, u: 2.1, r: 0.7 },
    { from: 0, to: POINT_4, rise: -2.89, km: 1.4, v: 0, u: 0, r: 0.5 },
    { from: 1, to: 2, rise: -0.53, km: 1.5, v: 2.01, u: 2.6, r: 0.5 },
    { from: 1, to: POINT_4, rise: -2.141, km: 1.9, v: -0.81, u: 0.7, r: 0.7 },
    { from: 2, to: POINT_4, rise: -1.614, km: 0.9, v: 0.18, u: 0.6, r: 0.2 },
  ];
  const found = leastSquares(
    [104.234, 103.487, 102.958],
    PRINTED.map(({ km, ...each }) => levelled({ ...each, sigma: 0.7e-3 * km })),
  );

  test('the heights and their standard errors are the printed ones', () => {
    expect(found.values.map((height) => height.toFixed(4))).toEqual(['104.2350', '103.4868', '102.9588']);
    // Printed with the reference variance of the adjustment, m0 = 1.65.
    const m0 = Math.sqrt(found.sum / 3);
    expect(m0.toFixed(2)).toBe('1.65');
    expect(found.sum.toFixed(3)).toBe('8.217');
    const errors = found.covariance.map((row, i) => (1000 * m0 * Math.sqrt(row[i] ?? 0)).toFixed(2));
    expect(errors).toEqual(['1.13', '1.19', '0.91']);
  });

  test.each(PRINTED.map((row, i) => ({ ...row, i })))('line $i: correction $v mm, U $u, r $r', ({ i, v, u, r }) => {
    const { residual = Number.NaN, w = Number.NaN, redundancy = Number.NaN } = found.residuals[i] ?? {};
    expect(1000 * residual).toBeCloseTo(v, 2);
    expect(Math.abs(w).toFixed(1)).toBe(u.toFixed(1));
    expect(redundancy.toFixed(1)).toBe(r.toFixed(1));
  });

  test('the redundancy numbers add up to the number of lines less that of heights', () => {
    expect(found.residuals.reduce((sum, { redundancy }) => sum + redundancy, 0)).toBeCloseTo(3, 9);
  });
});

/**
 * GNU Gama 1.5.09, sample "1D vertical least square adjustment": www.vrmapper.com/gama/1doutput.html. A loop of four legs,
 * each levelled there and back, 5 mm each; point 1a is known.
 */
describe('a loop of four legs, levelled there and back', () => {
  const KNOWN = { height: 1000 };
  const [P4, P3, P2] = [0, 1, 2];
  const PRINTED = [
    { from: KNOWN, to: P4, rise: -1.225, adjusted: -1.22488 },
    { from: P4, to: P3, rise: -0.848, adjusted: -0.84187 },
    { from: P3, to: P2, rise: 1.342, adjusted: 1.34163 },
    { from: P2, to: KNOWN, rise: 0.72, adjusted: 0.72513 },
    { from: KNOWN, to: P2, rise: -0.724, adjusted: -0.72513 },
    { from: P2, to: P3, rise: -1.335, adjusted: -1.34163 },
    { from: P3, to: P4, rise: 0.842, adjusted: 0.84187 },
    { from: P4, to: KNOWN, rise: 1.231, adjusted: 1.22488 },
  ];
  const found = leastSquares(
    [998.775, 997.927, 999.269],
    PRINTED.map((each) => levelled({ ...each, sigma: 0.005 })),
  );

  test('the heights and their standard errors are the printed ones', () => {
    expect(found.values.map((height) => height.toFixed(5))).toEqual(['998.77513', '997.93325', '999.27487']);
    const errors = found.covariance.map((row, i) => (1000 * Math.sqrt(row[i] ?? 0)).toFixed(1));
    expect(errors).toEqual(['3.1', '3.5', '3.1']);
    // [pvv] is in squared millimetres there.
    expect(found.sum * 25).toBeCloseTo(146.625, 3);
  });

  test('the adjusted rises are the printed ones', () => {
    for (const [i, { rise, adjusted }] of PRINTED.entries()) {
      // One of them ends in a 5 that is rounded either way.
      expect(Math.abs(rise + (found.residuals[i]?.residual ?? Number.NaN) - adjusted)).toBeLessThan(6e-6);
    }
  });

  test('the largest normalized residual is that of leg 6, 1.68', () => {
    const sizes = found.residuals.map(({ w }) => Math.abs(w));
    expect(sizes.indexOf(Math.max(...sizes)) + 1).toBe(6);
    expect(Math.max(...sizes).toFixed(2)).toBe('1.68');
  });
});

/**
 * C. D. Ghilani, P. R. Wolf, Adjustment Computations, example 14.1: distances in feet from three known stations; the data from
 * memory, as public exercises have them too. The book's answer is not at hand, so that the place is checked by search.
 */
test('distances from three known stations meet where no other place fits better', () => {
  const STATIONS = [
    { x: 865.4, y: 4527.15, far: 6049.0 },
    { x: 2432.55, y: 2047.25, far: 4736.83 },
    { x: 2865.22, y: 27.15, far: 5446.49 },
  ];
  const equations = STATIONS.map(
    ({ x, y, far }): ObservationEquation => ({
      unknowns: [0, 1],
      observed: far,
      sigma: 1,
      at([u = 0, v = 0]) {
        const value = Math.hypot(u - x, v - y);
        return { value, gradient: [(u - x) / value, (v - y) / value] };
      },
    }),
  );
  const found = leastSquares([6800, 3700], equations);
  const sumAt = (u: number, v: number): number =>
    STATIONS.reduce((sum, { x, y, far }) => sum + (Math.hypot(u - x, v - y) - far) ** 2, 0);
  const [u = 0, v = 0] = found.values;
  expect(found.sum).toBeCloseTo(sumAt(u, v), 12);
  for (const [du, dv] of [
    [0.01, 0],
    [-0.01, 0],
    [0, 0.01],
    [0, -0.01],
  ] as const) {
    expect(sumAt(u + du, v + dv)).toBeGreaterThan(found.sum);
  }
});
