import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutCycles } from '../../../src/core/change/cut-cycles.ts';

/** Whether nothing waits for itself among the vertices that are left: they can be taken away one after the other. */
function hasOrder(waits: readonly (readonly number[])[], cut: ReadonlySet<number>): boolean {
  const left = new Set([...waits.keys()].filter((vertex) => !cut.has(vertex)));
  for (;;) {
    const free = [...left].filter((vertex) => !(waits[vertex] ?? []).some((each) => left.has(each)));
    if (free.length === 0) return left.size === 0;
    for (const vertex of free) left.delete(vertex);
  }
}

/** The size of a smallest cut, by trying all sets. */
function smallestCut(waits: readonly (readonly number[])[]): number {
  let least = waits.length;
  for (let set = 0; set < 2 ** waits.length; set += 1) {
    const cut = new Set([...waits.keys()].filter((vertex) => (set >> vertex) & 1));
    if (cut.size < least && hasOrder(waits, cut)) least = cut.size;
  }
  return least;
}

test.each([
  ['nothing', [], []],
  ['a chain', [[], [0], [1]], []],
  ['two that wait for each other', [[1], [0]], [0]],
  ['a ring of three', [[1], [2], [0]], [0]],
  ['two rings with one vertex in common', [[1, 2], [0], [0]], [0]],
  ['two rings apart', [[1], [0], [3], [2]], [0, 2]],
] as const)('%s', (_, waits, cut) => {
  const found = cutCycles(waits);
  expect(found.length).toBe(cut.length);
  expect(hasOrder(waits, new Set(found))).toBe(true);
});

test('is a smallest set that leaves an order', () => {
  const graphs = fc.integer({ min: 1, max: 9 }).chain((count) => {
    const line = fc.uniqueArray(fc.integer({ min: 0, max: count - 1 }), { maxLength: 3 });
    return fc.array(line, { minLength: count, maxLength: count }).map((all) => {
      return all.map((line, own) => line.filter((each) => each !== own));
    });
  });
  fc.assert(
    fc.property(graphs, (waits) => {
      const cut = cutCycles(waits);
      expect(hasOrder(waits, new Set(cut))).toBe(true);
      expect(cut.length).toBe(smallestCut(waits));
    }),
    { numRuns: 200 },
  );
});

test('of a knot too large to try everything leaves an order too', () => {
  const waits = Array.from({ length: 40 }, (_, own) =>
    Array.from({ length: 40 }, (_, i) => i).filter((i) => i !== own),
  );
  const cut = cutCycles(waits);
  expect(hasOrder(waits, new Set(cut))).toBe(true);
  expect(cut.length).toBe(39);
});
