import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { pairOf, ZERO_GRADIENT } from './grip.ts';
import { offWallResidual, wallDimension } from './off-wall.ts';

/** Both ends of the piece, wherever it is gripped, the nearer to the wall first. */
function endsByDistance(gripped: readonly GrippedPose[]): readonly (readonly [GrippedPose, GrippedPose])[] {
  const [piece, wall] = pairOf(gripped, 'clear-of-wall');
  const both = [0, 1].map((at): readonly [GrippedPose, GrippedPose] => [{ ...piece, at }, wall]);
  return both.toSorted((a, b) => offWallResidual(a).value - offWallResidual(b).value);
}

/** What is missing to the distance; 0, with no gradient, when there is more. */
function shortfall(gripped: readonly GrippedPose[], least: number): Residual {
  const { value, gradient } = offWallResidual(gripped);
  return value < least ? { value: value - least, gradient } : { value: 0, gradient: [ZERO_GRADIENT, ZERO_GRADIENT] };
}

/** All of a piece is at least so far clear of a wall; farther is free. `measure` is the distance of its nearer end. */
export const clearOfWall: ConstraintKind = {
  id: 'clear-of-wall',
  title: 'At least clear of the wall',
  unit: 'm',
  takes: ['piece', 'wall'],
  suits: ['any'],
  measure: (gripped) => Math.min(...endsByDistance(gripped).map((each) => offWallResidual(each).value)),
  residuals(gripped, hold) {
    const [piece, wall] = pairOf(gripped, 'clear-of-wall');
    return [0, 1].map((at) => shortfall([{ ...piece, at }, wall], hold));
  },
  dimension: (gripped) => wallDimension(endsByDistance(gripped)[0] ?? gripped),
  sentence: ([piece, wall], value) => `${piece} is at least ${value} clear of ${wall}.`,
};
