import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { observedPair, pairOf, standoff } from './grip.ts';

function opening(gripped: readonly GrippedPose[], side: 1 | -1): Residual {
  return standoff(pairOf(gripped, 'touching'), side);
}

/** An end that is further from a side than this lies on no side of it, metres. Estimate. */
const NEAR_SIDE = 0.5;

/**
 * The first piece's gripped end lies against the long side of the second: its +y side for side 1, its −y side for −1.
 * The end's middle touches; the pieces lie flush where they are square. `measure` is the opening left, metres.
 */
export const touching: ConstraintKind = {
  id: 'touching',
  title: 'End against side',
  unit: 'none',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  ends: [[0, 1], [0.5]],
  isOnSide: (gripped, side) => Math.abs(opening(gripped, side).value) < NEAR_SIDE,
  measure: (gripped, side) => opening(gripped, side).value,
  residuals: (gripped, _, side) => [opening(gripped, side)],
  observed: ([first, second]) => [observedPair('against', first, second)],
  sentence: ([first, second]) => `The end of ${first} lies against ${second}.`,
};
