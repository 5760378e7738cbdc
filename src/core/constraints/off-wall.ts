import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, pairOf, residual, slope } from './grip.ts';

function clear(held: readonly Held[]): Residual {
  const [piece, wall] = pairOf(held, 'off-wall');
  const at = holdOf(piece);
  const along = holdOf(wall);
  const dx = at.x - along.x;
  const dy = at.y - along.y;
  const turn = piece.pose.angle - wall.pose.angle;
  const lean = Math.cos(turn) < 0 ? -1 : 1;
  const half = piece.width / 2;
  const spin = half * lean * Math.sin(turn);
  return residual(
    along.ux * dy - along.uy * dx - half * lean * Math.cos(turn),
    slope(at, -along.uy, along.ux, spin),
    slope(along, along.uy, -along.ux, -(along.ux * dx + along.uy * dy) - spin),
  );
}

/**
 * The clear distance from a wall to a piece at its gripped point: to the nearer corner of the cut across the piece there.
 * Grip the end nearest to the wall to keep the whole piece off it; grip the middle of a piece along the wall.
 *
 * The nearest corner of the whole piece would jump from one end to the other just when the piece lies along the wall,
 * the usual case; across the piece the jump is half a thickness and only where it stands square to the wall.
 */
export const offWall: ConstraintKind = {
  id: 'off-wall',
  title: 'Clear of the wall',
  unit: 'm',
  takes: ['piece', 'wall'],
  measure: (held) => clear(held).value,
  residuals(held, hold) {
    const now = clear(held);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  sentence: ([piece, wall], value) => `${piece} is ${value} clear of ${wall}.`,
};
