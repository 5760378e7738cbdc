/**
 * Least assignments that are printed elsewhere. Source: B. Clapper, munkres test suite; OR-Tools documentation, linear
 * assignment.
 */
import { expect, test } from 'vitest';
import { assignment } from '../../src/core/change/assignment.ts';

const ROWS = [
  {
    cost: [
      [5, 9, 1],
      [10, 3, 2],
      [8, 7, 4],
    ],
    total: 12,
  },
  {
    cost: [
      [12, 9, 27, 10, 23],
      [7, 13, 13, 30, 19],
      [25, 18, 26, 11, 26],
      [9, 28, 26, 23, 13],
      [16, 16, 24, 6, 9],
    ],
    total: 51,
    greedyByRow: 64,
  },
  {
    cost: [
      [90, 76, 75, 70],
      [35, 85, 55, 65],
      [125, 95, 90, 105],
      [45, 110, 95, 115],
    ],
    total: 265,
    greedyByRow: 305,
  },
  // Five rows for four columns: one is left over.
  {
    cost: [
      [90, 80, 75, 70],
      [35, 85, 55, 65],
      [125, 95, 90, 95],
      [45, 110, 95, 115],
      [50, 100, 90, 100],
    ],
    total: 265,
  },
];

/** Each row in turn takes what is cheapest of the columns that are left. */
function greedy(cost: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  return cost.reduce((sum, row) => {
    const [best] = [...row.entries()].filter(([j]) => !taken.has(j)).sort(([, a], [, b]) => a - b);
    taken.add(best?.[0] ?? -1);
    return sum + (best?.[1] ?? 0);
  }, 0);
}

test.each(ROWS)('the least total is $total', ({ cost, total }) => {
  expect(assignment(cost).total).toBe(total);
});

test('taking the cheapest of what is left, row by row, costs more', () => {
  for (const { cost, greedyByRow } of ROWS) if (greedyByRow !== undefined) expect(greedy(cost)).toBe(greedyByRow);
  expect(ROWS.some(({ total, greedyByRow = 0 }) => greedyByRow > total)).toBe(true);
});
