import { TOUCH } from '../plane/point.ts';
import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';

/** What has to be zero for a constraint to hold: its equations, and its bounds where it has some. */
export function constraintResiduals(
  kind: ConstraintKind,
  gripped: readonly GrippedPose[],
  { hold, side }: { readonly hold: number; readonly side: 1 | -1 },
): readonly Residual[] {
  const equations = kind.residuals(gripped, hold, side);
  return kind.bounds === undefined ? equations : [...equations, ...kind.bounds(gripped, side)];
}

/** Whether `measure` means something on the ground where the pieces lie now: they are inside the kind's bounds. */
export function isMeasurable(kind: ConstraintKind, gripped: readonly GrippedPose[], side: 1 | -1): boolean {
  return kind.bounds?.(gripped, side).every(({ value }) => value > -TOUCH) !== false;
}
