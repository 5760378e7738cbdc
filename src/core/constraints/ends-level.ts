import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, pairOf, residual, slope } from './grip.ts';

function uneven(held: readonly Held[], side: 1 | -1): Residual {
  const [first, second] = pairOf(held, 'ends-level');
  const a = holdOf(first);
  const b = holdOf(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const mx = (a.ux + side * b.ux) / 2;
  const my = (a.uy + side * b.uy) / 2;
  // Turning a pole turns its direction u by its normal (−uy, ux).
  const spin1 = (dy * a.ux - dx * a.uy) / 2;
  const spin2 = (side * (dy * b.ux - dx * b.uy)) / 2;
  return residual(dx * mx + dy * my, slope(a, -mx, -my, spin1), slope(b, mx, my, spin2));
}

/**
 * The line through the two gripped points meets both poles at the same angle: ends (grip 0 or 1) or centres (grip 0.5)
 * are level, square across parallel poles and on one arc in a fan. Side −1: the poles were laid end for end, so that
 * the second points the other way. `measure` is how far the second's point is ahead along the poles, metres.
 */
export const endsLevel: ConstraintKind = {
  id: 'ends-level',
  title: 'Ends level',
  unit: 'none',
  takes: ['piece', 'piece'],
  measure: (held, side) => uneven(held, side).value,
  residuals: (held, _, side) => [uneven(held, side)],
  sentence: ([first, second]) => `${first} and ${second} are level with each other.`,
};
