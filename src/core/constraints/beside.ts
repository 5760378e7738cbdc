import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisMiddle, axisPoint, observedPair, pairOf, pointAlong, standoff } from './grip.ts';

function clearDistance(gripped: readonly GrippedPose[], side: 1 | -1): Residual {
  const pair = pairOf(gripped, 'beside');
  return standoff(pair, side, pair[0].width / 2);
}

/**
 * The clear distance of a thing, at its gripped point, square to the long side of a pole or to that side's line: on its +y
 * side for side 1, on its −y side for −1. The thing counts with half its width, as if it faced the side.
 */
export const beside: ConstraintKind = {
  id: 'beside',
  title: 'Clear of the side',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'long'],
  leavesTurn: true,
  sided: true,
  measure: (gripped, side) => clearDistance(gripped, side).value,
  residuals(gripped, hold, side) {
    const now = clearDistance(gripped, side);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  dimension(gripped, side) {
    const [thing, pole] = pairOf(gripped, 'beside');
    const { ux, uy } = axisMiddle(pole);
    const away = { ux: -uy * side, uy: ux * side };
    const at = axisPoint(thing);
    return [
      pointAlong(at, away, -thing.width / 2 - clearDistance(gripped, side).value),
      pointAlong(at, away, -thing.width / 2),
    ];
  },
  observed: ([first, second]) => [observedPair('beside', first, second)],
  sentence: ([thing, pole], value) => `${thing} is ${value} clear of the side of ${pole}.`,
};
