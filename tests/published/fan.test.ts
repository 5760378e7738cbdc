/**
 * Closed form: sin(angle/2) = (gap − innerGap)/(2·fraction·length);
 * innerRadius = (innerGap + thickness/cos(angle/2))/(2·sin(angle/2)). Computed outside this program from that form;
 * the inputs are common practice, no source. Feet and degrees, tolerance 1e-5.
 */
import { describe, expect, test } from 'vitest';
import { buildKind } from '../../src/core/obstacles/build.ts';
import { fan } from '../../src/core/obstacles/poles/fan.ts';

const FT = 0.3048;
const TOLERANCE = 1e-5;

/** length, line, gap, innerGap, thickness → angle, innerRadius, lineRadius, outerGap. */
const ROWS = [
  [
    [12, 2 / 3, 6, 1, 1 / 3],
    [36.419914, 2.161452, 10.161452, 8.5],
  ],
  [
    [12, 0.75, 6, 1, 1 / 3],
    [32.25524, 2.42458, 11.42458, 7.666667],
  ],
  [
    [8, 2 / 3, 6, 1, 1 / 3],
    [55.906374, 1.469184, 6.802517, 8.5],
  ],
  [
    [10, 2 / 3, 6, 14 / 12, 1 / 3],
    [42.507618, 2.10252, 8.769186, 8.416667],
  ],
  [
    [12, 2 / 3, 3, 0.5, 0.25],
    [17.978599, 2.409948, 10.409948, 4.25],
  ],
] as const;

describe('a fan of equal straight poles', () => {
  test.each(ROWS)('%j ft opens to %j', (given, [angle, innerRadius, lineRadius, outerGap]) => {
    const [length, line, gap, innerGap, thickness] = given;
    const result = buildKind(fan, {
      length: length * FT,
      line,
      gap: gap * FT,
      innerGap: innerGap * FT,
      thickness: thickness * FT,
    });
    expect(result.kind).toBe('built');
    expect(Object.keys(result.facts).sort()).toEqual(['angle', 'innerRadius', 'lineRadius', 'outerGap']);
    const { facts } = result;
    expect(Math.abs(((facts.angle ?? 0) * 180) / Math.PI - angle)).toBeLessThan(TOLERANCE);
    expect(Math.abs((facts.innerRadius ?? 0) / FT - innerRadius)).toBeLessThan(TOLERANCE);
    expect(Math.abs((facts.lineRadius ?? 0) / FT - lineRadius)).toBeLessThan(TOLERANCE);
    expect(Math.abs((facts.outerGap ?? 0) / FT - outerGap)).toBeLessThan(TOLERANCE);
  });
});
