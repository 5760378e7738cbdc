import type { PlacedPiece } from '../../core/course/placed.ts';
import { type Point, TOUCH } from '../../core/plane/point.ts';
import { ringPointDistance } from '../../core/plane/segment.ts';
import type { Survey } from '../../core/survey.ts';

/** What stands is above what lies, and what lies is above what is walked on. */
const LAYER = { standing: 0, ground: 1, deck: 2 } as const;

/** The piece under the point: the nearest within reach, what stands before what lies; null for bare ground. */
export function pieceUnderPoint(survey: Pick<Survey, 'pieces'>, at: Point, pickRadius: number): PlacedPiece | null {
  let best: PlacedPiece | null = null;
  let least = pickRadius;
  for (const piece of survey.pieces) {
    // The bounding box rules out nearly all pieces before the exact distance is worked out.
    const half = (piece.figure.length + piece.figure.width) / 2 + pickRadius;
    if (Math.abs(piece.pose.x - at.x) > half || Math.abs(piece.pose.y - at.y) > half) continue;
    const off = ringPointDistance(piece.footprint, at);
    if (off > least + TOUCH) continue;
    const above = best === null || LAYER[piece.figure.stands] < LAYER[best.figure.stands];
    if (above || off < least - TOUCH) {
      best = piece;
      least = off;
    }
  }
  return best;
}
