import type { Metres } from '../../measure/quantity.ts';
import { distance, type Point } from '../../plane/point.ts';

function lengthOf(start: Point, order: readonly Point[]): Metres {
  return order.reduce((sum, at, i) => sum + distance(i === 0 ? start : (order[i - 1] as Point), at), 0);
}

/**
 * A short walk from a start through all places, as their indices: the nearest next, then improved by turning stretches round
 * (2-opt) until none makes it shorter. It need not come back.
 */
export function shortWalk(
  start: Point,
  places: readonly Point[],
): { readonly order: readonly number[]; readonly walked: Metres } {
  const left = places.map((_, i) => i);
  let order: number[] = [];
  let here = start;
  while (left.length > 0) {
    const next = left.reduce((best, i) =>
      distance(here, places[i] as Point) < distance(here, places[best] as Point) ? i : best,
    );
    order.push(next);
    left.splice(left.indexOf(next), 1);
    here = places[next] as Point;
  }
  const at = (indices: readonly number[]): readonly Point[] => indices.map((i) => places[i] as Point);
  let walked = lengthOf(start, at(order));
  for (let improved = true; improved; ) {
    improved = false;
    for (let i = 0; i < order.length - 1; i += 1) {
      for (let j = i + 1; j < order.length; j += 1) {
        const turned = [...order.slice(0, i), ...order.slice(i, j + 1).reverse(), ...order.slice(j + 1)];
        const length = lengthOf(start, at(turned));
        if (length < walked - 1e-9) [order, walked, improved] = [turned, length, true];
      }
    }
  }
  return { order, walked };
}
