import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisMiddle, axisPoint, pairOf, pointGradient, residual } from './grip.ts';

function radius(gripped: readonly GrippedPose[]): Residual {
  const [centre, piece] = pairOf(gripped, 'on-arc');
  const a = axisMiddle(centre);
  const b = axisPoint(piece);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = Math.hypot(dx, dy);
  // On the centre itself no direction is outwards: any one leads away.
  const gx = far === 0 ? 1 : dx / far;
  const gy = far === 0 ? 0 : dy / far;
  return residual(far, pointGradient(a, -gx, -gy), pointGradient(b, gx, gy));
}

/** The second's gripped point lies on an arc about the middle of the first, a marker as a rule. The value is its radius. */
export const onArc: ConstraintKind = {
  id: 'on-arc',
  title: 'On an arc about',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'any'],
  leavesTurn: true,
  measure: (gripped) => radius(gripped).value,
  residuals(gripped, hold) {
    const now = radius(gripped);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  dimension(gripped) {
    const [centre, piece] = pairOf(gripped, 'on-arc');
    const [a, b] = [axisMiddle(centre), axisPoint(piece)];
    return [
      { x: a.x, y: a.y },
      { x: b.x, y: b.y },
    ];
  },
  sentence: ([centre, piece], value) => `${piece} lies on an arc of ${value} radius about ${centre}.`,
};
