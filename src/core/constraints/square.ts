import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { lineAngle, observedPair, pairOf, residual } from './grip.ts';

function squareError(gripped: readonly GrippedPose[]): number {
  const [first, second] = pairOf(gripped, 'square');
  return lineAngle(second.pose.angle - first.pose.angle - Math.PI / 2);
}

/** Two pieces lie at right angles. `measure` is how far off, radians. */
export const square: ConstraintKind = {
  id: 'square',
  title: 'Square to each other',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: squareError,
  residuals: (gripped) => [residual(squareError(gripped), [0, 0, -1], [0, 0, 1])],
  observed: ([first, second]) => [observedPair('square', first, second)],
  sentence: ([first, second]) => `${first} and ${second} are square to each other.`,
};
