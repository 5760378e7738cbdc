import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Envelope, envelope, factor, substitute } from '../../../src/core/solve/envelope.ts';

/** An envelope filled with the lower half of a full matrix, row by row. */
function filled(rows: readonly (readonly number[])[], first = rows.map(() => 0)): Envelope {
  const matrix = envelope(Int32Array.from(first));
  rows.forEach((row, r) => {
    for (let c = first[r] ?? 0; c <= r; c++) matrix.cells[(matrix.rowOffset[r] ?? 0) + c] = row[c] ?? 0;
  });
  return matrix;
}

describe('the envelope', () => {
  test('solves a small system worked out by hand', () => {
    // [[4, 2], [2, 3]] · [1, 2] = [8, 8]
    const matrix = filled([[4], [2, 3]]);
    factor(matrix, 0);
    const side = Float64Array.from([8, 8]);
    substitute(matrix, side);
    expect(side[0]).toBeCloseTo(1, 12);
    expect(side[1]).toBeCloseTo(2, 12);
  });

  test('keeps a chain in cells as many as it is long', () => {
    const first = Array.from({ length: 100 }, (_, r) => Math.max(0, r - 1));
    expect(envelope(Int32Array.from(first)).cells).toHaveLength(199);
  });

  test('leaves out a row that says nothing new and still answers the rest', () => {
    // The third row is the sum of the first two.
    const matrix = filled([[1], [0, 1], [1, 1, 2]]);
    factor(matrix, 0);
    expect([...matrix.inverse].map((each) => each === 0)).toEqual([false, false, true]);
    const side = Float64Array.from([3, 4, 7]);
    substitute(matrix, side);
    expect([...side]).toEqual([3, 4, 0]);
  });

  test('leaves out an empty row', () => {
    const matrix = filled([[0], [0, 2]]);
    factor(matrix, 0);
    const side = Float64Array.from([5, 6]);
    substitute(matrix, side);
    expect(side[0]).toBe(0);
    expect(side[1]).toBeCloseTo(3, 12);
  });

  test('gives back what a banded matrix was multiplied with', () => {
    const number = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number, number, number), { minLength: 2, maxLength: 30 }), (drawn) => {
        const count = drawn.length;
        const full = drawn.map((_, r) =>
          drawn.map((__, c) => {
            const [near = 0, next = 0] = drawn[Math.max(r, c)] ?? [];
            if (r === c) return 9 + near;
            return Math.abs(r - c) === 1 ? near : Math.abs(r - c) === 2 ? next : 0;
          }),
        );
        const wanted = drawn.map(([, , , x]) => x);
        const side = Float64Array.from(
          full.map((row) => row.reduce((sum, each, c) => sum + each * (wanted[c] ?? 0), 0)),
        );
        const matrix = filled(
          full,
          Array.from({ length: count }, (_, r) => Math.max(0, r - 2)),
        );
        factor(matrix, 0);
        substitute(matrix, side);
        wanted.forEach((x, r) => {
          expect(side[r]).toBeCloseTo(x, 9);
        });
      }),
    );
  });
});
