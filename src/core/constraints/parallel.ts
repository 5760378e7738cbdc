import type { ConstraintKind, Held } from './constraint.ts';
import { lineAngle, pairOf, residual } from './grip.ts';

function off(held: readonly Held[]): number {
  const [first, second] = pairOf(held, 'parallel');
  return lineAngle(second.pose.angle - first.pose.angle);
}

/** Two pieces lie along the same direction; which end is which does not matter. `measure` is how far off, radians. */
export const parallel: ConstraintKind = {
  id: 'parallel',
  title: 'Parallel',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: off,
  residuals: (held) => [residual(off(held), [0, 0, -1], [0, 0, 1])],
  sentence: ([first, second]) => `${first} and ${second} are parallel.`,
};
