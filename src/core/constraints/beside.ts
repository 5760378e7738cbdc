import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { along, holdOf, middleOf, pairOf, residual, slope } from './grip.ts';

function clear(held: readonly Held[], side: 1 | -1): Residual {
  const [thing, pole] = pairOf(held, 'beside');
  const at = holdOf(thing);
  const line = middleOf(pole);
  const nx = -line.uy * side;
  const ny = line.ux * side;
  const dx = at.x - line.x;
  const dy = at.y - line.y;
  return residual(
    nx * dx + ny * dy - (thing.width + pole.width) / 2,
    slope(at, nx, ny),
    slope(line, -nx, -ny, -side * (line.ux * dx + line.uy * dy)),
  );
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
