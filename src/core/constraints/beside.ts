import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { along, holdOf, middleOf, pairOf, standoff } from './grip.ts';

function clear(held: readonly Held[], side: 1 | -1): Residual {
  const pair = pairOf(held, 'beside');
  return standoff(pair, side, pair[0].width / 2);
}

/**
 * The clear distance of a thing, at its gripped point, square to the long side of a pole or to that side's line: on its +y
 * side for side 1, on its −y side for −1. The thing counts with half its width, as if it faced the side.
 */
export const beside: ConstraintKind = {
  id: 'beside',
  title: 'Clear of the side',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'long'],
  sided: true,
  measure: (held, side) => clear(held, side).value,
  residuals(held, hold, side) {
    const now = clear(held, side);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  tape(held, side) {
    const [thing, pole] = pairOf(held, 'beside');
    const { ux, uy } = middleOf(pole);
    const away = { ux: -uy * side, uy: ux * side };
    const at = holdOf(thing);
    return [along(at, away, -thing.width / 2 - clear(held, side).value), along(at, away, -thing.width / 2)];
  },
  sentence: ([thing, pole], value) => `${thing} is ${value} clear of the side of ${pole}.`,
};
