/** The shortest path through a graph in layers: one state is taken of each, and only neighbours depend on each other. */
import { priorityQueue } from './priority-queue.ts';

/**
 * Costs in one unit, none below 0. The layers are numbered from 0; an edge goes from a state of one layer to a state of
 * the next, or from the source (layer −1, state 0) or to the sink (the layer after the last, state 0).
 */
export interface LayeredGraph {
  /** How many states each layer has, at least one. */
  readonly layers: readonly number[];
  /** What a state costs in itself. */
  stateCost(layer: number, state: number): number;
  /** A lower bound of what the edge into `to` of the layer costs. Asked for every edge, so it should be cheap. */
  leastEdgeCost(layer: number, from: number, to: number): number;
  /** What the edge into `to` of the layer costs. Asked once for an edge, and only while the edge may lie on the path. */
  edgeCost(layer: number, from: number, to: number): number;
}

/** A state of every layer, what the path costs, and for how many edges the cost was asked. */
export interface LayeredPath {
  readonly states: readonly number[];
  readonly cost: number;
  readonly edgesSought: number;
}

/** A state that is reached, over edges whose costs are known up to it or for all but its last edge. */
interface Reached {
  readonly layer: number;
  readonly state: number;
  readonly before: Reached | undefined;
  /** What the path costs up to here; with the least cost for its last edge while that edge is not sought. */
  readonly cost: number;
  readonly isSought: boolean;
}

const countAt = (layers: readonly number[], layer: number): number => layers[layer] ?? 1;

/** By layer and state, the least that the way on to the sink costs: dynamic programming from the sink, over least costs. */
function leastCostsOnward({ layers, stateCost, leastEdgeCost }: LayeredGraph): readonly (readonly number[])[] {
  const onward: number[][] = [[0]];
  for (let layer = layers.length; layer > 0; layer -= 1) {
    const next = onward[0] ?? [];
    const least = Array.from({ length: countAt(layers, layer - 1) }, (_, from) =>
      Math.min(
        ...next.map((cost, to) => {
          const own = layer < layers.length ? stateCost(layer, to) : 0;
          return leastEdgeCost(layer, from, to) + own + cost;
        }),
      ),
    );
    onward.unshift(least);
  }
  return onward;
}

function statesOf(end: Reached): number[] {
  const states: number[] = [];
  for (let at = end.before; at !== undefined && at.layer >= 0; at = at.before) states.unshift(at.state);
  return states;
}

/**
 * The shortest path from the source to the sink: A* whose estimate of the way on is exact for the least costs, and which
 * asks for an edge's true cost only when the edge comes first in the queue. The path is a shortest one as long as no least
 * cost is above its true cost.
 */
export function shortestLayeredPath(graph: LayeredGraph): LayeredPath {
  const { layers, stateCost, leastEdgeCost, edgeCost } = graph;
  const onward = leastCostsOnward(graph);
  const queue = priorityQueue<Reached>();
  const settled = new Set<string>();
  let edgesSought = 0;
  const add = (reached: Reached): void => {
    queue.add(reached.cost + (onward[reached.layer]?.[reached.state] ?? 0), reached);
  };
  add({ layer: -1, state: 0, before: undefined, cost: 0, isSought: true });
  for (let first = queue.next(); first !== undefined; first = queue.next()) {
    const { item } = first;
    const { layer, state, before } = item;
    const name = `${layer} ${state}`;
    if (settled.has(name)) continue;
    const own = layer >= 0 && layer < layers.length ? stateCost(layer, state) : 0;
    if (!item.isSought) {
      edgesSought += 1;
      add({ ...item, cost: (before?.cost ?? 0) + edgeCost(layer, before?.state ?? 0, state) + own, isSought: true });
      continue;
    }
    settled.add(name);
    if (layer === layers.length) return { states: statesOf(item), cost: item.cost, edgesSought };
    const next = layer + 1;
    for (let to = 0; to < countAt(layers, next); to += 1) {
      const toOwn = next < layers.length ? stateCost(next, to) : 0;
      const cost = item.cost + leastEdgeCost(next, state, to) + toOwn;
      add({ layer: next, state: to, before: item, cost, isSought: false });
    }
  }
  throw new Error('shortestLayeredPath: the sink was not reached, which a layer without a state causes');
}
