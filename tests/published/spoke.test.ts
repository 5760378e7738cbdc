/**
 * Closed form: innerRadius = base/2 + clear, lineRadius = innerRadius + fraction·length, arc = 2π·lineRadius/arms,
 * chord = 2·lineRadius·sin(π/arms). Computed outside this program; 12 ft poles, a 1 ft base, 2 ft clear and a line 3 ft
 * in from the outer end are common practice, no source: about 18 ft from pole to pole. Feet, tolerance 1e-5.
 */
import { describe, expect, test } from 'vitest';
import { buildKind } from '../../src/core/obstacles/build.ts';
import { spoke } from '../../src/core/obstacles/poles/spoke.ts';

const FT = 0.3048;
const TOLERANCE = 1e-5;

/** length, base, clear, arms, line → innerRadius, lineRadius, arc, chord. */
const ROWS = [
  [
    [12, 1, 2, 4, 0.75],
    [2.5, 11.5, 18.064158, 16.263456],
  ],
  [
    [12, 1, 2, 4, 2 / 3],
    [2.5, 10.5, 16.493361, 14.849242],
  ],
  [
    [10, 1, 2, 4, 0.75],
    [2.5, 10.0, 15.707963, 14.142136],
  ],
  [
    [8, 1, 2, 4, 2 / 3],
    [2.5, 7.833333, 12.304571, 11.078006],
  ],
  [
    [12, 1, 2, 5, 0.75],
    [2.5, 11.5, 14.451326, 13.519061],
  ],
  [
    [12, 1, 3, 6, 2 / 3],
    [3.5, 11.5, 12.042772, 11.5],
  ],
] as const;

describe('poles like the spokes of a wheel', () => {
  test.each(ROWS)('%j ft ride on %j', (given, expected) => {
    const [length, markerBase, clear, arms, line] = given;
    const result = buildKind(spoke, {
      length: length * FT,
      markerBase: markerBase * FT,
      clear: clear * FT,
      arms,
      line,
    });
    expect(result.kind).toBe('built');
    const { innerRadius = 0, lineRadius = 0, arc = 0, chord = 0 } = result.facts;
    [innerRadius, lineRadius, arc, chord].forEach((value, i) => {
      expect(Math.abs(value / FT - (expected[i] ?? Number.NaN))).toBeLessThan(TOLERANCE);
    });
  });
});
