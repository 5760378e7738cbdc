import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisMiddle, axisPoint, observedPair, pairOf, pointAlong, pointGradient, residual } from './grip.ts';

function clearDistance(gripped: readonly GrippedPose[]): Residual {
  const [marker, pole] = pairOf(gripped, 'marker-clear');
  const middle = axisMiddle(marker);
  const near = pole.at <= 0.5 ? 0 : 1;
  const end = axisPoint({ ...pole, at: near });
  const out = near === 0 ? 1 : -1;
  const dx = end.x - middle.x;
  const dy = end.y - middle.y;
  const gx = out * end.ux;
  const gy = out * end.uy;
  return residual(
    gx * dx + gy * dy - marker.width / 2,
    pointGradient(middle, -gx, -gy),
    pointGradient(end, gx, gy, out * (end.ux * dy - end.uy * dx)),
  );
}

/**
 * The clear distance from a marker's square base to the near end of a pole, taped along the pole; the base counts as
 * turned to face the pole, so that every arm of a spoke has the same inner radius, half a base more than the distance.
 * Grips: the marker, then the pole at its near end (0 or 1). It says nothing of the pole's aim: see `on-line`.
 */
export const clearOfMarker: ConstraintKind = {
  id: 'marker-clear',
  title: 'Clear of the marker',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'long'],
  leavesTurn: true,
  ends: [[0.5], [0, 1]],
  measure: (gripped) => clearDistance(gripped).value,
  residuals(gripped, hold) {
    const now = clearDistance(gripped);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  dimension(gripped) {
    const pole = pairOf(gripped, 'marker-clear')[1];
    const near = pole.at <= 0.5 ? 0 : 1;
    const end = axisPoint({ ...pole, at: near });
    return [pointAlong(end, end, (near === 0 ? -1 : 1) * clearDistance(gripped).value), pointAlong(end, end, 0)];
  },
  observed: ([first, second]) => [observedPair('clear', first, second)],
  sentence: ([marker, pole], value) => `${pole} is ${value} clear of the base of ${marker}.`,
};
