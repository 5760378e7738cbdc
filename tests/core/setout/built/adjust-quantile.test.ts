import { describe, expect, test } from 'vitest';
import { criticalW, normalQuantile } from '../../../../src/core/setout/built/adjust-quantile.ts';

/** Tables of the normal distribution: any statistics handbook. */
const TABLE = [
  [0.5, 0],
  [0.25, 0.6744898],
  [0.1, 1.2815516],
  [0.05, 1.6448536],
  [0.025, 1.959964],
  [0.005, 2.5758293],
  [0.001, 3.0902323],
  [0.0005, 3.2905267],
  [1e-6, 4.7534243],
  [1e-9, 5.9978071],
] as const;

describe('the normal distribution', () => {
  test.each(TABLE)('%f of it lie above %f', (tail, x) => {
    expect(normalQuantile(tail)).toBeCloseTo(x, 6);
  });

  test('a tail of nothing, or of more than a half, is a mistake', () => {
    expect(() => normalQuantile(0)).toThrow('got 0');
    expect(() => normalQuantile(0.6)).toThrow('got 0.6');
  });
});

describe('the critical w', () => {
  test('of one test is the two-sided quantile: 3.29 at 1 in 1000, as Baarda has it', () => {
    expect(criticalW(0.001, 1)).toBeCloseTo(3.2905, 4);
    expect(criticalW(0.05, 1)).toBeCloseTo(1.96, 3);
  });

  test('grows with the number of tests, so that all together keep the level', () => {
    // 1 − 0.95^(1/10) = 0.005116: two-sided.
    expect(criticalW(0.05, 10)).toBeCloseTo(normalQuantile(0.0051162 / 2), 4);
    expect(criticalW(0.05, 0)).toBe(criticalW(0.05, 1));
  });

  test('a level of nothing is a mistake', () => {
    expect(() => criticalW(0, 3)).toThrow('between 0 and 1, got 0');
  });
});
