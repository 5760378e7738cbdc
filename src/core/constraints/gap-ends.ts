import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { gapDimension, gapResidual, tapeBounds } from './gap.ts';
import { isNearlyParallel, pairOf } from './grip.ts';

/** The poles gripped at their −x ends, then at their +x ends; the second's the other way round when it lies end for end. */
function endPairs(gripped: readonly GrippedPose[]): readonly (readonly [GrippedPose, GrippedPose])[] {
  const [first, second] = pairOf(gripped, 'gap-ends');
  const turned = Math.cos(second.pose.angle - first.pose.angle) < 0;
  return [0, 1].map((at) => [
    { ...first, at },
    { ...second, at: turned ? 1 - at : at },
  ]);
}

function endGaps(gripped: readonly GrippedPose[], side: 1 | -1): readonly Residual[] {
  return endPairs(gripped).map((pair) => gapResidual(pair, side));
}

function firstGap(gripped: readonly GrippedPose[], side: 1 | -1): number {
  return endGaps(gripped, side)[0]?.value ?? 0;
}

/** The same gap at both ends of two poles of one length, inside to inside: two equations. `measure` is at the −x end. */
export const gapEnds: ConstraintKind = {
  id: 'gap-ends',
  title: 'Gap at both ends',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  isPlausible: (gripped, side) => firstGap(gripped, side) >= 0 && isNearlyParallel(gripped),
  measure: firstGap,
  residuals: (gripped, hold, side) =>
    endGaps(gripped, side).map(({ value, gradient }) => ({ value: value - hold, gradient })),
  bounds: (gripped, side) => endPairs(gripped).flatMap((pair) => tapeBounds(pair, side)),
  dimension: (gripped) => gapDimension(endPairs(gripped)[0] ?? gripped),
  sentence: ([first, second], value) =>
    `The gap between ${first} and ${second} is ${value} at both ends, inside to inside.`,
};
