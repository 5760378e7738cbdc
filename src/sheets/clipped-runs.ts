/** Strokes of the line of travel cut at the edge of a picture. */
import type { Bounds } from '../core/plane/ring.ts';
import { insideSpan } from './paper-shapes.ts';
import type { PaperPoint } from './paper-transform.ts';
import type { InkRun } from './travel.ts';

function pointAt(a: PaperPoint, b: PaperPoint, t: number): PaperPoint {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** The parts of the runs inside the box, in their order; all of them where there is no box. */
export function clippedRuns(runs: readonly InkRun[], box: Bounds | undefined): readonly InkRun[] {
  if (box === undefined) return runs;
  return runs.flatMap(({ ink, points }) => {
    const parts: PaperPoint[][] = [];
    let part: PaperPoint[] | undefined;
    for (let i = 1; i < points.length; i += 1) {
      const [a, b] = [points[i - 1] as PaperPoint, points[i] as PaperPoint];
      const span = insideSpan(a, b, box);
      if (span === undefined) {
        part = undefined;
        continue;
      }
      const [from, to] = span;
      if (part === undefined) {
        part = [pointAt(a, b, from)];
        parts.push(part);
      }
      part.push(pointAt(a, b, to));
      if (to < 1) part = undefined;
    }
    return parts.filter((each) => each.length > 1).map((each): InkRun => ({ ink, points: each }));
  });
}
