import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Component, connectedComponents } from '../../../src/core/solve/components.ts';
import { cuthillMcKee } from '../../../src/core/solve/ordering.ts';
import type { Problem } from '../../../src/core/solve/problem.ts';
import { systemOf } from '../../../src/core/solve/system.ts';
import { chain, fan, run } from './poles.ts';

function only(problem: Problem): Component {
  const [group, ...more] = connectedComponents(problem).filter(({ constraints: ties }) => ties.length > 0);
  if (group === undefined || more.length > 0) throw new Error('not one group');
  return group;
}
function cells(group: Component): number {
  return systemOf(group).matrix.cells.length;
}
/** The same component with its constraints in an order given by numbers. */
function shuffled(group: Component, keys: readonly number[]): Component {
  const order = group.constraints.map((tie, i) => ({ tie, key: keys[i % keys.length] ?? 0 }));
  return { ...group, constraints: order.sort((a, b) => a.key - b.key).map(({ tie }) => tie) };
}

describe('ties put in order', () => {
  const keys = fc.array(fc.nat(), { minLength: 120, maxLength: 120 });

  test('along a chain take no more room than the chain is long, however they were written', () => {
    fc.assert(
      fc.property(keys, (order) => {
        const group = only(chain(60));
        expect(cells(cuthillMcKee(shuffled(group, order)))).toBeLessThanOrEqual(5 * group.constraints.length);
      }),
      { numRuns: 20 },
    );
  });

  test('that were written all gaps first would take the square of it', () => {
    const group = only(chain(60));
    const sorted = { ...group, constraints: group.constraints.toSorted((a, b) => (a.id < b.id ? -1 : 1)) };
    expect(cells(sorted)).toBeGreaterThan(4 * cells(cuthillMcKee(sorted)));
  });

  test('are the same ties, each once', () => {
    for (const scene of [chain(6), run(6), fan(5)]) {
      const group = only(scene);
      expect(new Set(cuthillMcKee(group).constraints)).toEqual(new Set(group.constraints));
      expect(cuthillMcKee(group).constraints).toHaveLength(group.constraints.length);
    }
  });
});
