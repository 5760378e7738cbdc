import type { Pose } from '../../plane/pose.ts';
import type { PieceError } from '../setout.ts';
import { varianceOf } from './adjust-least-squares.ts';

type Covariance = readonly (readonly number[])[];

/** A linear form in the unknowns: with its slopes by x, y and angle of one piece, and of the one it is relative to. */
interface RelativeForm {
  readonly unknowns: readonly number[];
  readonly slopes: readonly number[];
}

/** Where a piece lies, and the place of its first unknown. */
interface LyingPiece {
  readonly at: number;
  readonly pose: Pose;
}

/**
 * How the shift of a point of a piece along a direction follows from the unknowns, seen from the held piece, which shifts
 * and turns too. The places are those of the first unknown of each.
 */
function shiftAlong(
  point: { readonly x: number; readonly y: number },
  [ux, uy]: readonly [number, number],
  { piece, held }: { readonly piece: LyingPiece; readonly held: LyingPiece | undefined },
): RelativeForm {
  const turned = (from: Pose) => uy * (point.x - from.x) - ux * (point.y - from.y);
  const own = [ux, uy, turned(piece.pose)];
  if (held === undefined) return { unknowns: [piece.at, piece.at + 1, piece.at + 2], slopes: own };
  const other = [-ux, -uy, -turned(held.pose)];
  return {
    unknowns: [piece.at, piece.at + 1, piece.at + 2, held.at, held.at + 1, held.at + 2],
    slopes: [...own, ...other],
  };
}

function covarianceOf(covariance: Covariance, a: RelativeForm, b: RelativeForm): number {
  const both = (sign: 1 | -1): number =>
    varianceOf(
      covariance,
      a.unknowns,
      a.slopes.map((slope, i) => slope + sign * (b.slopes[i] as number)),
    );
  return (both(1) - both(-1)) / 4;
}

/** The standard error in the worst direction, from the covariances along two square ones. */
function worstDirection(xx: number, xy: number, yy: number): number {
  return Math.sqrt(Math.max(0, (xx + yy) / 2 + Math.hypot((xx - yy) / 2, xy)));
}

/**
 * Standard errors of a piece as seen from the held piece of its group, 0 for that piece itself; on the ground where none is
 * given. `at` is the place of its first unknown.
 */
export function relativeError(
  covariance: Covariance,
  piece: LyingPiece & { readonly length: number },
  held?: LyingPiece,
): PieceError {
  if (piece.at === held?.at) return { along: 0, across: 0, turn: 0, end: 0 };
  const { pose, length } = piece;
  const [ux, uy] = [Math.cos(pose.angle), Math.sin(pose.angle)];
  const sigma = (form: RelativeForm): number =>
    Math.sqrt(Math.max(0, varianceOf(covariance, form.unknowns, form.slopes)));
  const ends = [-0.5, 0.5].map((share) => {
    const point = { x: pose.x + share * length * ux, y: pose.y + share * length * uy };
    const x = shiftAlong(point, [1, 0], { piece, held });
    const y = shiftAlong(point, [0, 1], { piece, held });
    return worstDirection(
      covarianceOf(covariance, x, x),
      covarianceOf(covariance, x, y),
      covarianceOf(covariance, y, y),
    );
  });
  return {
    along: sigma(shiftAlong(pose, [ux, uy], { piece, held })),
    across: sigma(shiftAlong(pose, [-uy, ux], { piece, held })),
    turn: sigma(
      held === undefined
        ? { unknowns: [piece.at + 2], slopes: [1] }
        : { unknowns: [piece.at + 2, held.at + 2], slopes: [1, -1] },
    ),
    end: Math.max(...ends),
  };
}
