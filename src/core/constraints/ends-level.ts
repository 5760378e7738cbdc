import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, observedPair, pairOf, pointGradient, residual } from './grip.ts';

/** Within this of parallel, radians, the directions of two pieces say by themselves whether they lie end for end: 2°. */
const NEARLY_PARALLEL = Math.PI / 90;

/**
 * Whether the second piece points the other way. Where they are nearly parallel, or gripped at a centre, their directions
 * tell it. In a corner the ends do: like ends that meet open evenly to both pieces, however wide the corner is.
 */
function isEndForEnd(first: GrippedPose, second: GrippedPose): boolean {
  const isOpposite = Math.cos(second.pose.angle - first.pose.angle) < 0;
  const ends = (first.at - 0.5) * (second.at - 0.5);
  const isParallel = Math.abs(Math.sin(second.pose.angle - first.pose.angle)) < Math.sin(NEARLY_PARALLEL);
  return ends === 0 || isParallel ? isOpposite : ends < 0;
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
  observed: ([first, second]) => [observedPair('level', first, second)],
  sentence: ([first, second]) => `${first} and ${second} are level with each other.`,
};
