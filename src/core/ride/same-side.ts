/** Whether two ways pass everything on the same side: one can be moved into the other without going over a thing. */
import type { PlacedObstacle, PlacedPiece } from '../course/placed.ts';
import type { Radians } from '../measure/quantity.ts';
import { type Path, pathBounds, poseOn } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import { boundsIntersect, unionBounds } from '../plane/ring.ts';

/** An arc is followed in steps of at most this angle. */
const STEP: Radians = Math.PI / 6;

/** How far a way turns in all, to the left positive. */
function signedTurn(path: Path): Radians {
  return path.reduce((sum, { length, curvature }) => sum + length * curvature, 0);
}

/** The angle through which a point sees the way go by, to the left positive: the winding of the way about it. */
export function sweptAngle(path: Path, { x, y }: Point): Radians {
  let swept = 0;
  for (const stretch of path) {
    const steps = Math.max(1, Math.ceil((stretch.length * Math.abs(stretch.curvature)) / STEP));
    let [ax, ay] = [stretch.start.x - x, stretch.start.y - y];
    for (let i = 1; i <= steps; i += 1) {
      const at = poseOn(stretch, (stretch.length * i) / steps);
      const [bx, by] = [at.x - x, at.y - y];
      swept += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
      [ax, ay] = [bx, by];
    }
  }
  return swept;
}

function middleOf({ footprint }: PlacedPiece): Point {
  const sum = footprint.reduce((at, point) => ({ x: at.x + point.x, y: at.y + point.y }), { x: 0, y: 0 });
  return { x: sum.x / footprint.length, y: sum.y / footprint.length };
}

/**
 * Whether two ways with nearly the same ends turn equally often and pass the middle of every piece on the same side.
 * Pieces that both may go over (`except`, keys) do not count.
 */
export function isSameSide(
  a: Path,
  b: Path,
  { obstacles, except }: { readonly obstacles: readonly PlacedObstacle[]; readonly except: readonly string[] },
): boolean {
  if (Math.abs(signedTurn(a) - signedTurn(b)) > Math.PI) return false;
  // Outside of the box that holds both, a point sees both go by alike.
  const box = unionBounds(pathBounds(a), pathBounds(b));
  for (const { bounds, pieces } of obstacles) {
    if (!boundsIntersect(bounds, box)) continue;
    for (const piece of pieces) {
      if (except.includes(piece.key)) continue;
      const middle = middleOf(piece);
      if (Math.abs(sweptAngle(a, middle) - sweptAngle(b, middle)) > Math.PI) return false;
    }
  }
  return true;
}
