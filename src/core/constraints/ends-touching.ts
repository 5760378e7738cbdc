import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, pairOf, residual, slope } from './grip.ts';

function apart(held: readonly Held[]): readonly [Residual, Residual] {
  const [first, second] = pairOf(held, 'ends-touching');
  const a = holdOf(first);
  const b = holdOf(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  // Along and across the first piece, which turns under the way from end to end.
  const ahead = a.ux * dx + a.uy * dy;
  const beside = a.ux * dy - a.uy * dx;
  return [
    residual(ahead, slope(a, -a.ux, -a.uy, beside), slope(b, a.ux, a.uy)),
    residual(beside, slope(a, a.uy, -a.ux, -ahead), slope(b, -a.uy, a.ux)),
  ];
}

/**
 * The gripped ends of two pieces meet: the middles of their end faces are one point. Two equations; the angle between them
 * is free, as at the corner of a V. `measure` is how far apart the ends are, metres.
 */
export const endsTouching: ConstraintKind = {
  id: 'ends-touching',
  title: 'Ends touching',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  ends: [
    [0, 1],
    [0, 1],
  ],
  measure: (held) => {
    const [ahead, beside] = apart(held);
    return Math.hypot(ahead.value, beside.value);
  },
  residuals: apart,
  sentence: ([first, second]) => `The ends of ${first} and ${second} touch.`,
};
