import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { type AxisPoint, axisMiddle, lineAngle, pointGradient, residual, threeOf } from './grip.ts';

/**
 * Two pieces as mirror images about the line through `axis`: the point midway between their middles lies on it, one middle
 * is straight across from the other, and they lean the same against it. Three equations.
 */
export function mirrorResiduals(
  [first, second]: readonly [GrippedPose, GrippedPose],
  axis: AxisPoint,
  angle: number,
): readonly Residual[] {
  const a = axisMiddle(first);
  const b = axisMiddle(second);
  const mx = (a.x + b.x) / 2 - axis.x;
  const my = (a.y + b.y) / 2 - axis.y;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const { ux, uy } = axis;
  return [
    residual(
      ux * my - uy * mx,
      pointGradient(a, -uy / 2, ux / 2),
      pointGradient(b, -uy / 2, ux / 2),
      pointGradient(axis, uy, -ux, -(ux * mx + uy * my)),
    ),
    residual(ux * dx + uy * dy, pointGradient(a, -ux, -uy), pointGradient(b, ux, uy), [0, 0, ux * dy - uy * dx]),
    residual(lineAngle(first.pose.angle + second.pose.angle - 2 * angle), [0, 0, 1], [0, 0, 1], [0, 0, -2]),
  ];
}

function pieceMirrorResiduals(gripped: readonly GrippedPose[]): readonly Residual[] {
  const [first, second, line] = threeOf(gripped, 'mirrored');
  return mirrorResiduals([first, second], axisMiddle(line), line.pose.angle);
}

/** Two pieces are mirror images about the line of a third. `measure` is how far midway between them is off it, metres. */
export const mirrored: ConstraintKind = {
  id: 'mirrored',
  title: 'Mirrored about a line',
  unit: 'none',
  takes: ['piece', 'piece', 'piece'],
  suits: ['any', 'any', 'any'],
  measure: (gripped) => pieceMirrorResiduals(gripped)[0]?.value ?? 0,
  residuals: pieceMirrorResiduals,
  sentence: ([first, second, line]) => `${first} and ${second} are mirror images about the line of ${line}.`,
};
