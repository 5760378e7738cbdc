import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/core/course/course.ts';
import { drawOrder, mostBetween, numberOrder } from '../../../src/core/go/draw-order.ts';
import '../../property-seed.ts';

/** One entry a letter: the letter rides it. */
function entriesOf(riders: string): readonly Entry[] {
  return [...riders].map((rider, i) => ({ id: `entry-${i + 1}`, number: String(i + 1), rider, horse: `Horse ${i}` }));
}

function ridersIn(list: readonly Entry[], order: readonly string[]): string {
  return order.map((id) => list.find((each) => each.id === id)?.rider ?? '?').join('');
}

/** The fewest goes of others between two goes of one rider; infinite where nobody goes twice. */
function leastBetween(riders: string): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, rider] of [...riders].entries()) {
    const next = riders.indexOf(rider, i + 1);
    if (next >= 0) least = Math.min(least, next - i - 1);
  }
  return least;
}

/** All different orders of a few letters. */
function ordersOf(letters: string): readonly string[] {
  if (letters.length < 2) return [letters];
  return [...new Set(letters)].flatMap((first) => ordersOf(letters.replace(first, '')).map((rest) => first + rest));
}

const ANY = { seed: 1, between: 99 };

test('the most that can lie between is worked out by hand', () => {
  // A.B.A, then two of A and two of B in four turns: ABAB. Three of A in seven turns: A..A..A.
  expect(mostBetween([2, 1])).toBe(1);
  expect(mostBetween([2, 2])).toBe(1);
  expect(mostBetween([3, 1, 1, 1, 1])).toBe(2);
  expect(mostBetween([2])).toBe(0);
  expect(mostBetween([1, 1, 1])).toBeNull();
  expect(mostBetween([])).toBeNull();
});

test('what is kept is the most that any order has, against all orders of up to seven goes', () => {
  const letters = fc.string({ unit: fc.constantFrom('a', 'b', 'c', 'd'), minLength: 2, maxLength: 7 });
  fc.assert(
    fc.property(letters, fc.nat(1e6), (riders, seed) => {
      const list = entriesOf(riders);
      const best = Math.max(...ordersOf([...riders].sort().join('')).map(leastBetween));
      const { order, most } = drawOrder(list, { seed, between: 99 });
      expect(most).toBe(Number.isFinite(best) ? best : null);
      expect(leastBetween(ridersIn(list, order))).toBe(best);
    }),
    { numRuns: 150 },
  );
});

describe('a drawn order', () => {
  const many = fc
    .array(fc.nat(12), { maxLength: 60 })
    .map((each) => entriesOf(each.map((i) => 'abcdefghijklm'[i]).join('')));

  test('is an order of all entries, keeps riders as far apart as asked or as can be, and repeats', () => {
    fc.assert(
      fc.property(many, fc.nat(1e9), fc.nat(9), (list, seed, wanted) => {
        const drawn = drawOrder(list, { seed, between: wanted });
        expect([...drawn.order].sort()).toEqual(list.map(({ id }) => id).sort());
        expect(drawn.between).toBe(drawn.most === null ? null : Math.min(wanted, drawn.most));
        expect(leastBetween(ridersIn(list, drawn.order))).toBeGreaterThanOrEqual(drawn.between ?? 0);
        expect(drawOrder(list.toReversed(), { seed, between: wanted })).toEqual(drawn);
      }),
    );
  });

  test('is another for another seed', () => {
    const list = entriesOf('abcdefghijkl');
    expect(drawOrder(list, { seed: 1, between: 0 }).order).not.toEqual(drawOrder(list, { seed: 2, between: 0 }).order);
  });

  test('gives every entry every turn about equally often', () => {
    const list = entriesOf('abcd');
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 4000; seed += 1) {
      for (const [turn, id] of drawOrder(list, { seed, between: 0 }).order.entries()) {
        counts.set(`${id} ${turn}`, (counts.get(`${id} ${turn}`) ?? 0) + 1);
      }
    }
    // Binomial, n = 4000, p = 1/4: one standard deviation is 27. Five of them.
    expect(counts.size).toBe(16);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(137);
  });

  test('tells riders apart by their names, however they are spaced or written large', () => {
    const list = entriesOf('abcdef').map((each, i) =>
      i < 2 ? { ...each, rider: ['Wren  Halden', ' wren halden'][i] ?? '' } : each,
    );
    const { order, most } = drawOrder(list, ANY);
    expect(most).toBe(4);
    expect([order[0], order[5]].sort()).toEqual(['entry-1', 'entry-2']);
  });

  test('takes entries without a rider for different people', () => {
    expect(
      drawOrder(
        entriesOf('abc').map((each) => ({ ...each, rider: '' })),
        ANY,
      ).most,
    ).toBeNull();
  });

  test('leaves out who is scratched: they stand last, and do not count as a go', () => {
    const list = entriesOf('abacd').map((each, i) =>
      i === 1 || i === 3 ? { ...each, scratched: true as const } : each,
    );
    const { order, most } = drawOrder(list, ANY);
    expect(most).toBe(1);
    expect(order.slice(3)).toEqual(['entry-2', 'entry-4']);
  });

  test('of five hundred goes, of which each rider has up to four, keeps fifty between', () => {
    const list = entriesOf('x'.repeat(500)).map((each, i) => ({ ...each, rider: `Rider ${i % 160}` }));
    const { order, between, most } = drawOrder(list, { seed: 7, between: 50 });
    expect([between, most]).toEqual([50, 159]);
    const places = new Map<string, number>();
    for (const [turn, id] of order.entries()) {
      const rider = list.find((each) => each.id === id)?.rider ?? '';
      expect(turn - (places.get(rider) ?? -99)).toBeGreaterThan(50);
      places.set(rider, turn);
    }
  });
});

test('the order by number counts as people do; what has no number comes last', () => {
  const list = ['10', '9', '', '12A', '12', '100', 'B7'].map(
    (number, i): Entry => ({
      ...{ id: number === '' ? 'none' : `n-${number.toLowerCase()}`, number, rider: String(i), horse: '' },
    }),
  );
  expect(numberOrder(list)).toEqual(['n-b7', 'n-9', 'n-10', 'n-12', 'n-12a', 'n-100', 'none']);
});
