import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, pairOf, pointGradient, residual } from './grip.ts';

function endOffsets(gripped: readonly GrippedPose[]): readonly [Residual, Residual] {
  const [first, second] = pairOf(gripped, 'ends-touching');
  const a = axisPoint(first);
  const b = axisPoint(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  // Along and across the first piece, which turns under the way from end to end.
  const ahead = a.ux * dx + a.uy * dy;
  const beside = a.ux * dy - a.uy * dx;
  return [
    residual(ahead, pointGradient(a, -a.ux, -a.uy, beside), pointGradient(b, a.ux, a.uy)),
    residual(beside, pointGradient(a, a.uy, -a.ux, -ahead), pointGradient(b, -a.uy, a.ux)),
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
  measure: (gripped) => {
    const [ahead, beside] = endOffsets(gripped);
    return Math.hypot(ahead.value, beside.value);
  },
  residuals: endOffsets,
  sentence: ([first, second]) => `The ends of ${first} and ${second} touch.`,
};
