import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, lineAngle, middleOf, pairOf, residual, slope } from './grip.ts';

/** How far the second's gripped point lies to the +y side of the first's axis line, metres. */
export function beside(held: readonly Held[], kind: string): Residual {
  const [first, second] = pairOf(held, kind);
  const line = middleOf(first);
  const at = holdOf(second);
  const dx = at.x - line.x;
  const dy = at.y - line.y;
  return residual(
    line.ux * dy - line.uy * dx,
    slope(line, line.uy, -line.ux, -(line.ux * dx + line.uy * dy)),
    slope(at, -line.uy, line.ux),
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
  measure: (held) => beside(held, 'in-line').value,
  residuals(held) {
    const [first, second] = pairOf(held, 'in-line');
    const off = lineAngle(second.pose.angle - first.pose.angle);
    return [residual(off, [0, 0, -1], [0, 0, 1]), beside(held, 'in-line')];
  },
  sentence: ([first, second]) => `${second} is in line with ${first}.`,
};
