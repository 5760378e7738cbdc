import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { lengthwiseOffset } from './ends-level.ts';
import { observedPair, pairOf } from './grip.ts';

function centreOffset(gripped: readonly GrippedPose[]): Residual {
  const [first, second] = pairOf(gripped, 'centres-level');
  const sign = Math.cos(second.pose.angle - first.pose.angle) < 0 ? -1 : 1;
  return lengthwiseOffset(
    [
      { ...first, at: 0.5 },
      { ...second, at: 0.5 },
    ],
    sign,
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
  measure: (gripped) => centreOffset(gripped).value,
  residuals: (gripped) => [centreOffset(gripped)],
  observed: ([first, second]) => [observedPair('level', { ...first, at: 0.5 }, { ...second, at: 0.5 })],
  sentence: ([first, second]) => `The centres of ${first} and ${second} are level with each other.`,
};
