import { chordsOf } from '../checks/geometry/path-chords.ts';
import { ownsOf } from '../checks/line/line-crosses.ts';
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { boundsIntersect } from '../plane/ring.ts';
import { ringSegmentDistance } from '../plane/segment.ts';
import type { LineElement } from '../ride/line.ts';
import type { Survey } from '../survey.ts';

/** Where the line comes nearest to a piece that is not ridden there. */
export interface LineClearance {
  readonly clear: Metres;
  /** Of the piece. */
  readonly key: string;
  readonly leg: number;
}

function clearanceOf({ path }: LineElement, piece: PlacedPiece, below: Metres): Metres | undefined {
  const { points, bounds } = chordsOf(path);
  if (!boundsIntersect(bounds, piece.bounds, Math.min(below, 1e6))) return undefined;
  let least = below;
  for (let i = 1; i < points.length; i += 1) {
    const [a, b] = [points[i - 1], points[i]];
    if (a !== undefined && b !== undefined) least = Math.min(least, ringSegmentDistance(piece.footprint, [a, b]));
  }
  return least < below ? least : undefined;
}

/**
 * The least distance from the line to a piece of another obstacle than those it comes from and goes to there; null where
 * there is no such piece. To the middle of the horse: half its width is not taken off.
 */
export function lineClearance(survey: Survey): LineClearance | null {
  let least: LineClearance | null = null;
  for (const element of survey.line.elements) {
    const own = ownsOf(survey, element);
    for (const piece of survey.pieces) {
      if (own.includes(piece.obstacle)) continue;
      const clear = clearanceOf(element, piece, least?.clear ?? Number.POSITIVE_INFINITY);
      if (clear !== undefined) least = { clear, key: piece.key, leg: element.leg };
    }
  }
  return least;
}
