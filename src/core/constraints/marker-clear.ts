import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { along, holdOf, middleOf, pairOf, residual, slope } from './grip.ts';

function clear(held: readonly Held[]): Residual {
  const [marker, pole] = pairOf(held, 'marker-clear');
  const middle = middleOf(marker);
  const near = pole.at <= 0.5 ? 0 : 1;
  const end = holdOf({ ...pole, at: near });
  const out = near === 0 ? 1 : -1;
  const dx = end.x - middle.x;
  const dy = end.y - middle.y;
  const gx = out * end.ux;
  const gy = out * end.uy;
  return residual(
    gx * dx + gy * dy - marker.width / 2,
    slope(middle, -gx, -gy),
    slope(end, gx, gy, out * (end.ux * dy - end.uy * dx)),
  );
}

/**
 * The clear distance from a marker's square base to the near end of a pole, taped along the pole; the base counts as
 * turned to face the pole, so that every arm of a spoke has the same inner radius, half a base more than the distance.
 * Grips: the marker, then the pole at its near end (0 or 1). It says nothing of the pole's aim: see `on-line`.
 */
export const markerClear: ConstraintKind = {
  id: 'marker-clear',
  title: 'Clear of the marker',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['small', 'long'],
  ends: [[0.5], [0, 1]],
  measure: (held) => clear(held).value,
  residuals(held, hold) {
    const now = clear(held);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  tape(held) {
    const pole = pairOf(held, 'marker-clear')[1];
    const near = pole.at <= 0.5 ? 0 : 1;
    const end = holdOf({ ...pole, at: near });
    return [along(end, end, (near === 0 ? -1 : 1) * clear(held).value), along(end, end, 0)];
  },
  sentence: ([marker, pole], value) => `${pole} is ${value} clear of the base of ${marker}.`,
};
