import type { Point } from '../plane/point.ts';
import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, observedPair, pairOf, pointAlong, pointGradient, residual } from './grip.ts';

/** How far the cut across a piece at its gripped point is from a wall. */
export function offWallResidual(gripped: readonly GrippedPose[]): Residual {
  const [piece, wall] = pairOf(gripped, 'off-wall');
  const at = axisPoint(piece);
  const base = axisPoint(wall);
  const dx = at.x - base.x;
  const dy = at.y - base.y;
  const turn = piece.pose.angle - wall.pose.angle;
  const lean = Math.cos(turn) < 0 ? -1 : 1;
  const half = piece.width / 2;
  const spin = half * lean * Math.sin(turn);
  return residual(
    base.ux * dy - base.uy * dx - half * lean * Math.cos(turn),
    pointGradient(at, -base.uy, base.ux, spin),
    pointGradient(base, base.uy, -base.ux, -(base.ux * dx + base.uy * dy) - spin),
  );
}

/** From the wall square to the nearer corner of the cut across the piece. */
export function wallDimension(gripped: readonly GrippedPose[]): readonly [Point, Point] {
  const [piece, wall] = pairOf(gripped, 'off-wall');
  const at = axisPoint(piece);
  const { ux, uy } = axisPoint(wall);
  const inward = { ux: -uy, uy: ux };
  const half = (piece.width / 2) * Math.abs(Math.cos(piece.pose.angle - wall.pose.angle));
  return [pointAlong(at, inward, -half - offWallResidual(gripped).value), pointAlong(at, inward, -half)];
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
  measure: (gripped) => offWallResidual(gripped).value,
  residuals(gripped, hold) {
    const now = offWallResidual(gripped);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  dimension: wallDimension,
  observed: ([first, second]) => [observedPair('off-wall', first, second)],
  sentence: ([piece, wall], value) => `${piece} is ${value} clear of ${wall}.`,
};
