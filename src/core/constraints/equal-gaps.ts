import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { taped } from './gap.ts';
import { FLAT, residual, type Slope, threeOf } from './grip.ts';

function minus([ax, ay, at]: Slope, [bx, by, bt]: Slope): Slope {
  return [ax - bx, ay - by, at - bt];
}

function difference(held: readonly Held[], side: 1 | -1): Residual {
  const [first, second, third] = threeOf(held, 'equal-gaps');
  const before = taped([first, second], side);
  const after = taped([second, third], side);
  const [b1 = FLAT, b2 = FLAT] = before.gradient;
  const [a2 = FLAT, a3 = FLAT] = after.gradient;
  return residual(before.value - after.value, b1, minus(b2, a2), minus(FLAT, a3));
}

/**
 * Three poles in a row with the same gap before and after the middle one, whatever it is. `side` as for a gap: 1 when
 * each lies on the +y side of the one before. `measure` is how much wider the first gap is, metres.
 */
export const equalGaps: ConstraintKind = {
  id: 'equal-gaps',
  title: 'Equal gaps',
  unit: 'none',
  takes: ['piece', 'piece', 'piece'],
  suits: ['long', 'long', 'long'],
  sided: true,
  measure: (held, side) => difference(held, side).value,
  residuals: (held, _, side) => [difference(held, side)],
  sentence: ([first, second, third]) =>
    `The gap between ${first} and ${second} is the same as that between ${second} and ${third}.`,
};
