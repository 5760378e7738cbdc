import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisMiddle, axisPoint, lineAngle, observedPair, pairOf, pointGradient, residual } from './grip.ts';

/** How far the second's gripped point lies to the +y side of the first's axis line, metres. */
export function offsetFromLine(gripped: readonly GrippedPose[], kind: string): Residual {
  const [first, second] = pairOf(gripped, kind);
  const line = axisMiddle(first);
  const at = axisPoint(second);
  const dx = at.x - line.x;
  const dy = at.y - line.y;
  return residual(
    line.ux * dy - line.uy * dx,
    pointGradient(line, line.uy, -line.ux, -(line.ux * dx + line.uy * dy)),
    pointGradient(at, -line.uy, line.ux),
  );
}

/**
 * Two pieces on one line: they are parallel and the second's gripped point (its middle when none is given) lies on the
 * axis line of the first. Two equations. `measure` is how far that point is off the line, metres.
 */
export const inLine: ConstraintKind = {
  id: 'in-line',
  title: 'In line',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  measure: (gripped) => offsetFromLine(gripped, 'in-line').value,
  residuals(gripped) {
    const [first, second] = pairOf(gripped, 'in-line');
    const off = lineAngle(second.pose.angle - first.pose.angle);
    return [residual(off, [0, 0, -1], [0, 0, 1]), offsetFromLine(gripped, 'in-line')];
  },
  observed: ([first, second]) => [0, 1].map((at) => observedPair('in-line', first, { ...second, at })),
  sentence: ([first, second]) => `${second} is in line with ${first}.`,
};
