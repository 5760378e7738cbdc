import '../../../property-seed.ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BandRow,
  type MoveChoice,
  type MoveSet,
  movesOfSize,
  nearestMoves,
  searchSize,
  stepwiseMoves,
} from '../../../../src/core/setout/built/mends-search.ts';

const LIMITS = { step: 1, margin: 0, slack: 0, most: 8 };

/** Two ends and the whole of each of some poles. */
function choices(poles: number): readonly MoveChoice[] {
  return Array.from({ length: poles }, (_, i) => `pole-${i + 1}`).flatMap((piece): readonly MoveChoice[] => [
    { piece, ends: 2, off: 0 },
    { piece, ends: 1, off: 0 },
    { piece, ends: 1, off: 0 },
  ]);
}

function fewest(rows: readonly BandRow[], of: readonly MoveChoice[], most: number): MoveSet | undefined {
  for (let size = 1; size <= most; size += 1) {
    const [first] = movesOfSize(rows, of, size, LIMITS);
    if (first !== undefined) return first;
  }
  return undefined;
}

/** Every whole move of one choice, or of two, tried one by one. */
function byTrying(rows: readonly BandRow[], of: readonly MoveChoice[]): MoveSet | undefined {
  const amounts = Array.from({ length: 17 }, (_, i) => i - 8).filter((by) => by !== 0);
  const isInside = (moves: MoveSet['moves']): boolean =>
    rows.every(({ value, least, most, slopes }) => {
      const there = moves.reduce((sum, { choice, by }) => sum + (slopes[choice] as number) * by, value);
      return there >= least - 2e-5 && there <= most + 2e-5;
    });
  const set = (moves: MoveSet['moves']): MoveSet => ({
    moves,
    travel: moves.reduce((sum, { choice, by }) => sum + (of[choice]?.ends ?? 1) * Math.abs(by), 0),
    towards: 0,
  });
  const best = (all: readonly MoveSet['moves'][]): MoveSet | undefined =>
    all
      .filter(isInside)
      .map(set)
      .toSorted((a, b) => a.travel - b.travel)[0];
  const singles = of.flatMap((_, choice) => amounts.map((by) => [{ choice, by }]));
  const one = best(singles);
  if (one !== undefined) return one;
  const pairs = of.flatMap((first, a) =>
    of.flatMap((second, b) => {
      const isSame = first.piece === second.piece && (first.ends === 2 || second.ends === 2);
      if (b <= a || isSame) return [];
      return amounts.flatMap((x) =>
        amounts.map((y) => [
          { choice: a, by: x },
          { choice: b, by: y },
        ]),
      );
    }),
  );
  return best(pairs);
}

describe('the fewest moves', () => {
  test('one row is mended by the move that does most for it', () => {
    const rows = [{ value: 33, least: 36, most: 42, slopes: [1, 0.5, 0.5] }];
    // Both ends by 3 travel 6, as one end by 6 does: the whole pole keeps its heading.
    expect(fewest(rows, choices(1), 2)).toMatchObject({ moves: [{ choice: 0, by: 3 }], travel: 6 });
  });

  test('of two poles that mend it alike, the one that lies off the drawing is moved', () => {
    const rows = [{ value: 33, least: 36, most: 42, slopes: [1, -1] }];
    const poles = (offs: readonly number[]): readonly MoveChoice[] =>
      offs.map((off, i) => ({ piece: `pole-${i}`, ends: 2, off }));
    expect(fewest(rows, poles([-3, 0]), 1)?.moves).toEqual([{ choice: 0, by: 3 }]);
    expect(fewest(rows, poles([0, 3]), 1)?.moves).toEqual([{ choice: 1, by: -3 }]);
  });

  test('two rows that share a pole are mended by its end where only that mends both', () => {
    const rows = [
      { value: 34, least: 36, most: 42, slopes: [1, 0, 1] },
      { value: 12, least: 11, most: 12, slopes: [1, 1, 0] },
    ];
    expect(fewest(rows, choices(1), 2)).toMatchObject({ moves: [{ choice: 2, by: 2 }], travel: 2 });
  });

  test('are as few and as small as trying every one finds', () => {
    const value = fc.integer({ min: -6, max: 6 });
    const slopes = fc.array(fc.constantFrom(-1, -0.5, 0, 0.25, 0.5, 1), { minLength: 6, maxLength: 6 });
    const row = fc.tuple(value, fc.integer({ min: 2, max: 4 }), slopes);
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 4 }), (drawn) => {
        const rows = drawn.map(
          ([at, wide, by]): BandRow => ({ value: at, least: -wide / 2, most: wide / 2, slopes: by }),
        );
        if (rows.every(({ value: at, least, most }) => at >= least && at <= most)) return;
        const all = choices(2);
        const tried = byTrying(rows, all);
        const found = fewest(rows, all, 2);
        expect(found?.moves.length).toBe(tried?.moves.length);
        expect(found?.travel).toBe(tried?.travel);
      }),
      { numRuns: 150 },
    );
  });

  test('a row that is out by less than a tape shows is left alone', () => {
    const rows = [
      { value: 35.9, least: 36, most: 42, slopes: [0, 0, 0] },
      { value: 33, least: 36, most: 42, slopes: [1, 0, 0] },
    ];
    expect(movesOfSize(rows, choices(1), 1, LIMITS)).toEqual([]);
    expect(movesOfSize(rows, choices(1), 1, { ...LIMITS, margin: -0.25, slack: 0.25 })).toHaveLength(1);
  });

  test('nothing is moved further than a pole is moved', () => {
    expect(fewest([{ value: 0, least: 9, most: 12, slopes: [1, 0, 0] }], choices(1), 2)).toBeUndefined();
  });

  test('what cannot be reached is brought as near as moves bring it', () => {
    const rows = [
      { value: 0, least: 4, most: 5, slopes: [1, 0, 0] },
      { value: 0, least: -1, most: 1, slopes: [1, 0, 0] },
    ];
    expect(fewest(rows, choices(1), 2)).toBeUndefined();
    const nearest = nearestMoves(rows, choices(1), 2, LIMITS);
    expect(nearest?.moves).toHaveLength(1);
    const by = nearest?.moves[0]?.by ?? 0;
    expect(by).toBeGreaterThanOrEqual(1);
    expect(by).toBeLessThanOrEqual(4);
  });

  test('step by step, rows are brought in that take more moves than are tried together', () => {
    const poles = Array.from({ length: 5 }, (_, i): MoveChoice => ({ piece: `pole-${i}`, ends: 2, off: 0 }));
    const rows = poles.map((_, i) => ({ value: 0, least: 2, most: 3, slopes: poles.map((_, j) => (i === j ? 1 : 0)) }));
    expect(stepwiseMoves(rows, poles, LIMITS)).toMatchObject({ travel: 20 });
    expect(stepwiseMoves(rows, poles.slice(1), LIMITS)).toBeUndefined();
  });

  test('the size of a search is counted before it is begun', () => {
    // 4 of 9 moves, 4 of 6 rows, both edges of each.
    expect(searchSize(9, 6, 4)).toBe(126 * 15 * 16);
    expect(searchSize(2, 6, 4)).toBe(0);
  });
});
