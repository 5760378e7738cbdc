import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { pairOf, standoff } from './grip.ts';

function opening(held: readonly Held[], side: 1 | -1): Residual {
  return standoff(pairOf(held, 'touching'), side);
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
