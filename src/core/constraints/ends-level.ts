import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, pairOf, pointGradient, residual } from './grip.ts';

/**
 * Whether the second piece points the other way. Ends tell it: the −x end of one beside the +x end of the other. Centres
 * do not; there the directions tell it, which must not be near a right angle.
 */
function isEndForEnd(first: GrippedPose, second: GrippedPose): boolean {
  const ends = (first.at - 0.5) * (second.at - 0.5);
  return ends === 0 ? Math.cos(second.pose.angle - first.pose.angle) < 0 : ends < 0;
}

/** How far the second's gripped point is ahead of the first's along the poles; `way` −1: they lie end for end. */
export function lengthwiseOffset([first, second]: readonly [GrippedPose, GrippedPose], sign: 1 | -1): Residual {
  const a = axisPoint(first);
  const b = axisPoint(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const mx = (a.ux + sign * b.ux) / 2;
  const my = (a.uy + sign * b.uy) / 2;
  // Turning a pole turns its direction u by its normal (−uy, ux).
  const spin1 = (dy * a.ux - dx * a.uy) / 2;
  const spin2 = (sign * (dy * b.ux - dx * b.uy)) / 2;
  return residual(dx * mx + dy * my, pointGradient(a, -mx, -my, spin1), pointGradient(b, mx, my, spin2));
}

function levelResidual(gripped: readonly GrippedPose[]): Residual {
  const pair = pairOf(gripped, 'ends-level');
  return lengthwiseOffset(pair, isEndForEnd(...pair) ? -1 : 1);
}

/**
 * The line through the two gripped points meets both poles at the same angle: ends (grip 0 or 1) or centres (grip 0.5)
 * are level, square across parallel poles and on one arc in a fan. Poles may lie end for end. `measure` is how far the second's point is ahead along the poles, metres.
 */
export const endsLevel: ConstraintKind = {
  id: 'ends-level',
  title: 'Ends level',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  ends: [
    [0, 1],
    [0, 1],
  ],
  measure: (gripped) => levelResidual(gripped).value,
  residuals: (gripped) => [levelResidual(gripped)],
  sentence: ([first, second]) => `${first} and ${second} are level with each other.`,
};
