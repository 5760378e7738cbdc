import type { PlacedPiece } from '../course/placed.ts';
import { endDirections } from './determine.ts';
import { type Covariance, covarianceOf, ownVariance, type Solved } from './placement.ts';
import type { PieceError } from './setout.ts';

type Direction = readonly [number, number, number];

/** The larger eigenvalue of a covariance of two, as a standard error. */
function worst(xx: number, yy: number, xy: number): number {
  return Math.sqrt((xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy));
}

/** The standard errors of a piece: the last of those in a covariance, or one that was just determined. */
export function pieceError(piece: PlacedPiece, by: Covariance | Solved): PieceError {
  const variance = (direction: Direction): number =>
    'gain' in by ? ownVariance(by, direction) : covarianceOf(by, [by.count - 1, direction], [by.count - 1, direction]);
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
