import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { gapResidual, tapeBounds } from './gap.ts';
import { type Gradient, isNearlyParallel, residual, threeOf, ZERO_GRADIENT } from './grip.ts';

function minus([ax, ay, at]: Gradient, [bx, by, bt]: Gradient): Gradient {
  return [ax - bx, ay - by, at - bt];
}

function gapDifference(gripped: readonly GrippedPose[], side: 1 | -1): Residual {
  const [first, second, third] = threeOf(gripped, 'equal-gaps');
  const before = gapResidual([first, second], side);
  const after = gapResidual([second, third], side);
  const [b1 = ZERO_GRADIENT, b2 = ZERO_GRADIENT] = before.gradient;
  const [a2 = ZERO_GRADIENT, a3 = ZERO_GRADIENT] = after.gradient;
  return residual(before.value - after.value, b1, minus(b2, a2), minus(ZERO_GRADIENT, a3));
}

function bothBounds(gripped: readonly GrippedPose[], side: 1 | -1): readonly Residual[] {
  const [first, second, third] = threeOf(gripped, 'equal-gaps');
  const before = tapeBounds([first, second], side).map(({ value, gradient: [a = ZERO_GRADIENT, b = ZERO_GRADIENT] }) =>
    residual(value, a, b, ZERO_GRADIENT),
  );
  const after = tapeBounds([second, third], side).map(({ value, gradient: [b = ZERO_GRADIENT, c = ZERO_GRADIENT] }) =>
    residual(value, ZERO_GRADIENT, b, c),
  );
  return [...before, ...after];
}

/**
 * Three poles in a row with the same gap before and after the middle one, whatever it is. `side` as for a gap: 1 when
 * each lies on the +y side of the one before. `measure` is how much wider the first gap is, metres.
 */
export const equalGaps: ConstraintKind = {
  id: 'equal-gaps',
  title: 'Equal gaps',
  unit: 'none',
  takes: ['piece', 'piece', 'piece'],
  suits: ['long', 'long', 'long'],
  sided: true,
  isPlausible: isNearlyParallel,
  isOnSide: (gripped, side) => gapResidual(gripped.slice(0, 2), side).value > 0,
  measure: (gripped, side) => gapDifference(gripped, side).value,
  residuals: (gripped, _, side) => [gapDifference(gripped, side)],
  bounds: bothBounds,
  sentence: ([first, second, third]) =>
    `The gap between ${first} and ${second} is the same as that between ${second} and ${third}.`,
};
