/** Tapes as dimension lines on paper, and the letters of the ends between which they lie. */
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import { isSmall, placeOn } from '../core/setout/observables.ts';
import type { PartNames } from '../core/setout/words/place-words.ts';
import { type LabelledMarks, labelAt } from './dimension-labels.ts';
import type { OccupancyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { arrowhead } from './travel.ts';

/** The stroke of a tape, mm. */
export const TAPE = { ink: 'words', width: 0.35 } as const;
const ARROWHEAD = 1.9;
/** A tape shorter than this has bars at its ends and no arrowheads, mm. */
const SHORT = 6;

/** A straight on paper. */
export type Stroke = readonly [PaperPoint, PaperPoint];

/** A dimension line: arrowheads at both ends, or bars where it is short. */
export function dimensionMarks([a, b]: Stroke): readonly Mark<'paper'>[] {
  const long = distance(a, b);
  const heading = Math.atan2(b.y - a.y, b.x - a.x);
  const line: Mark<'paper'> = { kind: 'line', points: [a, b], ...TAPE };
  if (long >= SHORT) return [line, headMark(a, heading + Math.PI), headMark(b, heading)];
  const [x, y] = [-Math.sin(heading), Math.cos(heading)];
  const bar = (at: PaperPoint): Mark<'paper'> => ({
    kind: 'line',
    points: [
      { x: at.x - x, y: at.y - y },
      { x: at.x + x, y: at.y + y },
    ],
    ...TAPE,
  });
  return [line, bar(a), bar(b)];
}

/** An arrowhead whose tip is at a place. */
export function headMark(tip: PaperPoint, heading: number): Mark<'paper'> {
  const back = 0.6 * ARROWHEAD;
  const at = { x: tip.x - back * Math.cos(heading), y: tip.y - back * Math.sin(heading) };
  return { kind: 'area', ink: 'words', ring: arrowhead(at, heading, ARROWHEAD) };
}

/** Straight on from an end, then to its sides. */
function letterPlaces(end: PaperPoint, middle: PaperPoint, size: number): readonly PaperPoint[] {
  const away = Math.atan2(end.y - middle.y, end.x - middle.x);
  return [1, 1.4].flatMap((far) =>
    [0, 0.7, -0.7, 1.3, -1.3].map((turn) => ({
      x: end.x + far * size * Math.cos(away + turn),
      y: end.y + far * size * Math.sin(away + turn),
    })),
  );
}

/** The letters of the ends of pieces, each beside its end. */
export function letterLabels(
  grid: OccupancyGrid,
  { names, transform, size }: { readonly names: PartNames; readonly transform: PaperTransform; readonly size: number },
  pieces: readonly PlacedPiece[],
): readonly LabelledMarks[] {
  return pieces.flatMap((piece) => {
    const letters = names.part.letters.get(piece.key) ?? [];
    const middle = onPaper(transform, piece.pose);
    return letters.map((text, i) => {
      const end = onPaper(transform, placeOn(piece, i));
      return labelAt(grid, { text, size, weight: 'bold' }, letterPlaces(end, middle, size), end);
    });
  });
}

/** Off the long sides of a piece, from its middle outward. */
export function placesBesidePiece(piece: PlacedPiece, transform: PaperTransform, off: number): readonly PaperPoint[] {
  const heading = Math.atan2(
    ...difference(onPaper(transform, placeOn(piece, 1)), onPaper(transform, placeOn(piece, 0))),
  );
  const [nx, ny] = [-Math.sin(heading), Math.cos(heading)];
  const spots = isSmall(piece) ? [0.5] : [0.5, 0.38, 0.62, 0.26, 0.74];
  return spots.flatMap((at) =>
    [1, -1].map((side) => {
      const { x, y } = onPaper(transform, placeOn(piece, at));
      return { x: x + side * off * nx, y: y + side * off * ny };
    }),
  );
}

function difference(a: PaperPoint, b: PaperPoint): [number, number] {
  return [a.y - b.y, a.x - b.x];
}
