import { describe, expect, test } from 'vitest';
import { connectedComponents } from '../../../src/core/solve/components.ts';
import type { Body, ConstraintEquations } from '../../../src/core/solve/problem.ts';

const body = (id: string, weight = 1): Body => ({ id, pose: { x: 0, y: 0, angle: 0 }, weight, radiusOfGyration: 1 });
const tie = (...bodies: readonly string[]): ConstraintEquations => ({
  id: bodies.join('-'),
  bodies,
  residuals: () => [],
});
const names = (things: readonly { readonly id: string }[]): readonly string[] => things.map(({ id }) => id);

describe('groups', () => {
  test('are what hangs together by ties, in the order of the bodies', () => {
    const parts = connectedComponents({
      bodies: ['a', 'b', 'c', 'd'].map((id) => body(id)),
      constraints: [tie('c', 'a'), tie('b', 'd')],
    });
    expect(parts.map(({ free }) => names(free))).toEqual([
      ['a', 'c'],
      ['b', 'd'],
    ]);
    expect(parts.map(({ constraints: ties }) => names(ties))).toEqual([['c-a'], ['b-d']]);
  });

  test('are not joined by a body that never moves, but both hold on to it', () => {
    const bodies = [body('a'), body('wall', Number.POSITIVE_INFINITY), body('b')];
    const parts = connectedComponents({ bodies, constraints: [tie('a', 'wall'), tie('wall', 'b')] });
    expect(parts.map(({ free, grounded: still }) => [names(free), names(still)])).toEqual([
      [['a'], ['wall']],
      [['b'], ['wall']],
    ]);
  });

  test('hold a tie between bodies that never move by itself', () => {
    const bodies = [body('a', Number.POSITIVE_INFINITY), body('b', Number.POSITIVE_INFINITY)];
    const [part, ...more] = connectedComponents({ bodies, constraints: [tie('a', 'b')] });
    expect(more).toEqual([]);
    expect(part?.free).toEqual([]);
    expect(names(part?.constraints ?? [])).toEqual(['a-b']);
  });

  test('follow a long chain without running out of stack', () => {
    const ids = Array.from({ length: 5000 }, (_, i) => `p${i}`);
    const ties = ids.slice(1).map((id, i) => tie(ids[i] ?? '', id));
    expect(connectedComponents({ bodies: ids.map((id) => body(id)), constraints: ties.toReversed() })).toHaveLength(1);
  });
});
