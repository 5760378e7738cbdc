import type { Metres } from '../../measure/quantity.ts';
import { memoizeByIdentity } from '../../memo/by-identity.ts';
import { type Path, pathBounds, pathPoints } from '../../plane/path.ts';
import { distance, type Point } from '../../plane/point.ts';
import type { Bounds } from '../../plane/ring.ts';

/** With chords of this length the error is below half a centimetre on the tightest arc that a horse turns on. */
const STEP: Metres = 0.25;

/** A part of the line as straight chords, with the distance along it at each point. */
export interface Chords {
  readonly points: readonly Point[];
  readonly along: readonly Metres[];
  readonly bounds: Bounds;
}

export const chordsOf = memoizeByIdentity((path: Path): Chords => {
  const points = path.flatMap((stretch) =>
    // A straight is one chord, however long.
    pathPoints([stretch], stretch.curvature === 0 ? Math.max(stretch.length, STEP) : STEP),
  );
  let total = 0;
  const along = points.map((point, i) => {
    total += i === 0 ? 0 : distance(points[i - 1] ?? point, point);
    return total;
  });
  const chords = { points, along, bounds: pathBounds(path) };
  return chords;
});
