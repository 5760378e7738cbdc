import type { PlacedPiece } from '../../course/placed.ts';
import type { PieceError } from '../setout.ts';
import { carriedBy, endDirections } from './determine.ts';
import { type Covariance, covarianceOf } from './placement.ts';

type Direction = readonly [number, number, number];

/** The larger eigenvalue of a covariance of two, as a standard error. */
function worst(xx: number, yy: number, xy: number): number {
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}

/**
 * The standard errors of the last piece of a covariance: relative to the first of them, or on the ground when it is the only
 * one.
 */
export function pieceError(piece: PlacedPiece, first: PlacedPiece, by: Covariance): PieceError {
  const last = by.count - 1;
  const variance = (direction: Direction): number => {
    const own = covarianceOf(by, [last, direction], [last, direction]);
    if (last === 0) return own;
    const carried = carriedBy(first, piece.pose, direction);
    const shared = covarianceOf(by, [last, direction], [0, carried]);
    return Math.max(0, own + 2 * shared + covarianceOf(by, [0, carried], [0, carried]));
  };
  const between = (a: Direction, b: Direction): number => {
    const sum: Direction = [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
    return (variance(sum) - variance(a) - variance(b)) / 2;
  };
  const { angle } = piece.pose;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [ax, ay, bx, by2] = endDirections(piece) as readonly [Direction, Direction, Direction, Direction];
  return {
    along: Math.sqrt(variance([c, s, 0])),
    across: Math.sqrt(variance([-s, c, 0])),
    turn: Math.sqrt(variance([0, 0, 1])),
    end: Math.max(
      worst(variance(ax), variance(ay), between(ax, ay)),
      worst(variance(bx), variance(by2), between(bx, by2)),
    ),
  };
}
