import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LayeredGraph, shortestLayeredPath } from '../../../src/core/ride/layered-graph.ts';

/** Whole costs by layer, from and to; a share of each is told beforehand. */
interface Costs {
  readonly layers: readonly number[];
  readonly states: readonly (readonly number[])[];
  readonly edges: readonly (readonly (readonly number[])[])[];
  readonly share: number;
}

const MOST_STATES = 4;
const cost = fc.integer({ min: 0, max: 50 });
const row = fc.array(cost, { minLength: MOST_STATES, maxLength: MOST_STATES });
const costs: fc.Arbitrary<Costs> = fc
  .array(fc.integer({ min: 1, max: MOST_STATES }), { minLength: 0, maxLength: 5 })
  .chain((layers) =>
    fc.record({
      layers: fc.constant(layers),
      states: fc.array(row, { minLength: layers.length, maxLength: layers.length }),
      edges: fc.array(fc.array(row, { minLength: MOST_STATES, maxLength: MOST_STATES }), {
        minLength: layers.length + 1,
        maxLength: layers.length + 1,
      }),
      share: fc.constantFrom(0, 0.3, 0.9, 1),
    }),
  );

const edgeOf = ({ edges }: Costs, layer: number, from: number, to: number) => edges[layer]?.[from]?.[to] ?? 0;

function graphOf(of: Costs, asked: string[] = []): LayeredGraph {
  return {
    layers: of.layers,
    stateCost: (layer, state) => of.states[layer]?.[state] ?? 0,
    leastEdgeCost: (...at) => of.share * edgeOf(of, ...at),
    edgeCost(...at) {
      asked.push(at.join(' '));
      return edgeOf(of, ...at);
    },
  };
}

function costOf(of: Costs, states: readonly number[]): number {
  const path = [0, ...states, 0];
  const ways = of.edges.reduce((sum, _, layer) => sum + edgeOf(of, layer, path[layer] ?? 0, path[layer + 1] ?? 0), 0);
  return states.reduce((sum, state, layer) => sum + (of.states[layer]?.[state] ?? 0), ways);
}

/** Every choice of one state a layer. */
function choices(layers: readonly number[]): readonly (readonly number[])[] {
  return layers.reduce<readonly (readonly number[])[]>(
    (all, count) => all.flatMap((one) => Array.from({ length: count }, (_, state) => [...one, state])),
    [[]],
  );
}

describe('the shortest path through layers', () => {
  test('costs what the best of all choices costs, and what its own edges and states add up to', () => {
    fc.assert(
      fc.property(costs, (of) => {
        const found = shortestLayeredPath(graphOf(of));
        expect(found.states).toHaveLength(of.layers.length);
        expect(found.cost).toBeCloseTo(Math.min(...choices(of.layers).map((each) => costOf(of, each))), 9);
        expect(found.cost).toBeCloseTo(costOf(of, found.states), 9);
      }),
      { numRuns: 300 },
    );
  });

  test('asks for no edge twice, and with true costs told beforehand only for those of the path', () => {
    fc.assert(
      fc.property(costs, (of) => {
        const asked: string[] = [];
        const { edgesSought } = shortestLayeredPath(graphOf(of, asked));
        expect(new Set(asked).size).toBe(asked.length);
        expect(edgesSought).toBe(asked.length);
      }),
    );
    const told: Costs = {
      layers: [2, 2],
      states: [
        [0, 9],
        [9, 0],
      ],
      edges: [
        [[1, 1]],
        [
          [5, 4],
          [1, 1],
        ],
        [[2], [2]],
      ],
      share: 1,
    };
    const asked: string[] = [];
    expect(shortestLayeredPath(graphOf(told, asked))).toEqual({ states: [0, 1], cost: 7, edgesSought: 3 });
    expect(asked).toEqual(['0 0 0', '1 0 1', '2 1 0']);
  });

  test('a graph without layers is its one edge', () => {
    expect(shortestLayeredPath(graphOf({ layers: [], states: [], edges: [[[8]]], share: 0.5 })).cost).toBe(8);
  });

  test('a layer without a state is refused', () => {
    const empty = graphOf({ layers: [0], states: [[]], edges: [[[1]], [[1]]], share: 1 });
    expect(() => shortestLayeredPath(empty)).toThrow(/without a state/);
  });
});
