import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { uneven } from './ends-level.ts';
import { pairOf } from './grip.ts';

function off(held: readonly Held[]): Residual {
  const [first, second] = pairOf(held, 'centres-level');
  const way = Math.cos(second.pose.angle - first.pose.angle) < 0 ? -1 : 1;
  return uneven(
    [
      { ...first, at: 0.5 },
      { ...second, at: 0.5 },
    ],
    way,
  );
}

/**
 * The middles of two pieces are level, wherever they are gripped: square across parallel poles of any two lengths, on
 * one arc in a fan. `measure` is how far the second's middle is ahead, metres.
 */
export const centresLevel: ConstraintKind = {
  id: 'centres-level',
  title: 'Centres level',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: (held) => off(held).value,
  residuals: (held) => [off(held)],
  sentence: ([first, second]) => `The centres of ${first} and ${second} are level with each other.`,
};
