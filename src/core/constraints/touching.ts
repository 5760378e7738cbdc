import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, middleOf, pairOf, residual, slope } from './grip.ts';

function opening(held: readonly Held[], side: 1 | -1): Residual {
  const [first, second] = pairOf(held, 'touching');
  const end = holdOf(first);
  const line = middleOf(second);
  const nx = -line.uy * side;
  const ny = line.ux * side;
  const dx = end.x - line.x;
  const dy = end.y - line.y;
  return residual(
    nx * dx + ny * dy - second.width / 2,
    slope(end, nx, ny),
    slope(line, -nx, -ny, -side * (line.ux * dx + line.uy * dy)),
  );
}

/**
 * The first piece's gripped end lies against the long side of the second: its +y side for side 1, its −y side for −1.
 * The end's middle touches; the pieces lie flush where they are square. `measure` is the opening left, metres.
 */
export const touching: ConstraintKind = {
  id: 'touching',
  title: 'End against side',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  ends: [[0, 1], [0.5]],
  measure: (held, side) => opening(held, side).value,
  residuals: (held, _, side) => [opening(held, side)],
  sentence: ([first, second]) => `The end of ${first} lies against ${second}.`,
};
