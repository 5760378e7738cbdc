import fc from 'fast-check';
import munkres from 'munkres';
import { describe, expect, test } from 'vitest';
import { type Assignment, assignment } from '../../../src/core/change/assignment.ts';
import { bruteTotal } from './grounds.ts';

function sum(values: readonly number[]): number {
  return values.reduce((all, each) => all + each, 0);
}

/** The proof of least cost, looked at for itself: no pair is cheaper than its potentials, and they add up to the total. */
function expectProven(costs: readonly (readonly number[])[], found: Assignment): void {
  const { pairs, total, rowPotentials: u, columnPotentials: v } = found;
  const columns = costs[0]?.length ?? 0;
  expect(pairs.length).toBe(Math.min(costs.length, columns));
  expect(new Set(pairs.map(([row]) => row)).size).toBe(pairs.length);
  expect(new Set(pairs.map(([, column]) => column)).size).toBe(pairs.length);
  expect(sum(pairs.map(([row, column]) => costs[row]?.[column] as number))).toBeCloseTo(total, 6);
  for (const [row, line] of costs.entries()) {
    for (const [column, cost] of line.entries()) {
      expect((u[row] as number) + (v[column] as number)).toBeLessThanOrEqual(cost + 1e-9);
    }
  }
  const rowsTaken = new Set(pairs.map(([row]) => row));
  const columnsTaken = new Set(pairs.map(([, column]) => column));
  for (const [row, potential] of u.entries()) if (!rowsTaken.has(row)) expect(potential).toBeLessThanOrEqual(0);
  for (const [column, potential] of v.entries())
    if (!columnsTaken.has(column)) expect(potential).toBeLessThanOrEqual(0);
  expect(sum(u) + sum(v)).toBeCloseTo(total, 6);
}

function matrices(most: number) {
  const side = fc.integer({ min: 1, max: most });
  return fc.tuple(side, side).chain(([rows, columns]) => {
    const cost = fc.oneof(fc.integer({ min: -20, max: 20 }), fc.double({ min: -50, max: 100, noNaN: true }));
    const line = fc.array(cost, { minLength: columns, maxLength: columns });
    return fc.array(line, { minLength: rows, maxLength: rows });
  });
}

describe('the least assignment', () => {
  test('costs what brute force finds, wide, square and tall', () => {
    fc.assert(
      fc.property(matrices(6), (costs) => {
        const found = assignment(costs);
        const [rows, columns] = [costs.length, costs[0]?.length ?? 0];
        const wide =
          rows <= columns ? costs : Array.from({ length: columns }, (_, j) => costs.map((row) => row[j] as number));
        expect(found.total).toBeCloseTo(bruteTotal(wide), 6);
        expectProven(costs, found);
      }),
      { numRuns: 200 },
    );
  });

  test('costs what the munkres package finds, and proves it', () => {
    fc.assert(
      fc.property(matrices(25), (costs) => {
        const found = assignment(costs);
        const theirs = munkres(costs.map((row) => [...row]));
        expect(found.total).toBeCloseTo(sum(theirs.map(([row, column]) => costs[row]?.[column] as number)), 6);
        expectProven(costs, found);
      }),
      { numRuns: 60 },
    );
  });

  test('of nothing is nothing', () => {
    expect(assignment([])).toEqual({ total: 0, pairs: [], rowPotentials: [], columnPotentials: [] });
    expect(assignment([[], []])).toEqual({ total: 0, pairs: [], rowPotentials: [0, 0], columnPotentials: [] });
  });

  test('of rows of different lengths, or of costs that are no numbers, is a mistake of the program', () => {
    expect(() => assignment([[1, 2], [1]])).toThrow('row 1 has 1 costs, row 0 has 2');
    expect(() => assignment([[Number.POSITIVE_INFINITY]])).toThrow('costs are finite');
    expect(() => assignment([[Number.NaN]])).toThrow('costs are finite');
  });
});
