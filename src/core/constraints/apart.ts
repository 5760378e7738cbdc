import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, observedPair, pairOf, pointAlong, pointGradient, residual } from './grip.ts';

function clearDistance(gripped: readonly GrippedPose[]): Residual {
  const [first, second] = pairOf(gripped, 'apart');
  const a = axisPoint(first);
  const b = axisPoint(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = Math.hypot(dx, dy);
  // Two things on one point have no direction between them: +x separates them as well as any.
  const gx = far === 0 ? 1 : dx / far;
  const gy = far === 0 ? 0 : dy / far;
  return residual(far - (first.width + second.width) / 2, pointGradient(a, -gx, -gy), pointGradient(b, gx, gy));
}

/**
 * The clear distance between two small things (markers, barrels, posts) on the straight from one gripped point to the
 * other; each counts with half its width, as if it faced the other.
 */
export const apart: ConstraintKind = {
  id: 'apart',
  title: 'Distance between',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'small'],
  leavesTurn: true,
  measure: (gripped) => clearDistance(gripped).value,
  residuals(gripped, hold) {
    const now = clearDistance(gripped);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  dimension(gripped) {
    const [first, second] = pairOf(gripped, 'apart');
    const [a, b] = [axisPoint(first), axisPoint(second)];
    const far = Math.hypot(b.x - a.x, b.y - a.y);
    const direction = far === 0 ? { ux: 1, uy: 0 } : { ux: (b.x - a.x) / far, uy: (b.y - a.y) / far };
    return [pointAlong(a, direction, first.width / 2), pointAlong(b, direction, -second.width / 2)];
  },
  observed: ([first, second]) => [observedPair('between', first, second)],
  sentence: ([first, second], value) => `${first} and ${second} are ${value} apart.`,
};
