import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { type BoundedPath, shortestPath } from '../plane/bounded-curvature.ts';
import type { Path } from '../plane/path.ts';
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';

/** How far from an obstacle's corners a way round it passes: a horse and a little. Estimate. */
const CLEAR: Metres = 1;

/** A way round a corner. */
export interface Detour {
  readonly length: Metres;
  readonly path: Path;
}

function corners({ bounds: { minX, minY, maxX, maxY } }: PlacedObstacle): Point[] {
  return [
    { x: minX - CLEAR, y: minY - CLEAR },
    { x: maxX + CLEAR, y: minY - CLEAR },
    { x: maxX + CLEAR, y: maxY + CLEAR },
    { x: minX - CLEAR, y: maxY + CLEAR },
  ];
}

function heading(from: Point, to: Point): number {
  return Math.atan2(to.y - from.y, to.x - from.x);
}

/** The shorter of the ways through a corner, headed there as one comes, as one goes on, or as the whole way runs. */
function roundCorner(begin: Pose, corner: Point, finish: Pose, radius: Metres): Detour {
  let best: readonly [BoundedPath, BoundedPath] | undefined;
  for (const angle of [heading(begin, corner), heading(corner, finish), heading(begin, finish)]) {
    const at = { ...corner, angle };
    const way = [shortestPath(begin, at, radius), shortestPath(at, finish, radius)] as const;
    if (best === undefined || way[0].length + way[1].length < best[0].length + best[1].length) best = way;
  }
  if (best === undefined) throw new Error('roundCorner: no heading was tried');
  return { length: best[0].length + best[1].length, path: [...best[0].path, ...best[1].path] };
}

/** Ways from one pose to another round each corner of what is in the way. */
export function detours(
  { begin, finish }: { readonly begin: Pose; readonly finish: Pose },
  inTheWay: readonly PlacedObstacle[],
  radius: Metres,
): Detour[] {
  return inTheWay.flatMap((obstacle) => corners(obstacle).map((corner) => roundCorner(begin, corner, finish, radius)));
}
