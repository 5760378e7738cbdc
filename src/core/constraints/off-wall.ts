import type { Point } from '../plane/point.ts';
import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { along, holdOf, pairOf, residual, slope } from './grip.ts';

/** How far the cut across a piece at its gripped point is from a wall. */
export function offWallAt(held: readonly Held[]): Residual {
  const [piece, wall] = pairOf(held, 'off-wall');
  const at = holdOf(piece);
  const base = holdOf(wall);
  const dx = at.x - base.x;
  const dy = at.y - base.y;
  const turn = piece.pose.angle - wall.pose.angle;
  const lean = Math.cos(turn) < 0 ? -1 : 1;
  const half = piece.width / 2;
  const spin = half * lean * Math.sin(turn);
  return residual(
    base.ux * dy - base.uy * dx - half * lean * Math.cos(turn),
    slope(at, -base.uy, base.ux, spin),
    slope(base, base.uy, -base.ux, -(base.ux * dx + base.uy * dy) - spin),
  );
}

/** From the wall square to the nearer corner of the cut across the piece. */
export function wallTape(held: readonly Held[]): readonly [Point, Point] {
  const [piece, wall] = pairOf(held, 'off-wall');
  const at = holdOf(piece);
  const { ux, uy } = holdOf(wall);
  const inward = { ux: -uy, uy: ux };
  const half = (piece.width / 2) * Math.abs(Math.cos(piece.pose.angle - wall.pose.angle));
  return [along(at, inward, -half - offWallAt(held).value), along(at, inward, -half)];
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
  suits: ['any'],
  measure: (held) => offWallAt(held).value,
  residuals(held, hold) {
    const now = offWallAt(held);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  tape: wallTape,
  sentence: ([piece, wall], value) => `${piece} is ${value} clear of ${wall}.`,
};
