import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { lineAngle, pairOf, residual } from './grip.ts';

function parallelError(gripped: readonly GrippedPose[]): number {
  const [first, second] = pairOf(gripped, 'parallel');
  return lineAngle(second.pose.angle - first.pose.angle);
}

/** Two pieces lie along the same direction; which end is which does not matter. `measure` is how far off, radians. */
export const parallel: ConstraintKind = {
  id: 'parallel',
  title: 'Parallel',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: parallelError,
  residuals: (gripped) => [residual(parallelError(gripped), [0, 0, -1], [0, 0, 1])],
  sentence: ([first, second]) => `${first} and ${second} are parallel.`,
};
