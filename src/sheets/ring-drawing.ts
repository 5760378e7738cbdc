/** An obstacle on its ring card: its pieces with the letters of their ends, and where each gap is taped. */
import type { PlacedObstacle } from '../core/course/placed.ts';
import { type Bounds, unionBounds } from '../core/plane/ring.ts';
import type { Ground } from '../core/setout/ground.ts';
import type { GapError } from '../core/setout/setout.ts';
import { namedUnit, type PartNames, partPieceWords } from '../core/setout/words/place-words.ts';
import { readingWords } from '../core/setout/words/reading-words.ts';
import { tapeLine } from '../core/setout/words/tape-lines.ts';
import { besideTape, type LabelledMarks, labelAt } from './dimension-labels.ts';
import { dimensionMarks, letterLabels, placesBesidePiece, type Stroke } from './dimension-lines.ts';
import { clearestDrawing } from './fitted-transform.ts';
import { drawnBounds, footprintOnPaper, pieceMarks } from './ground.ts';
import { blockLine, blockRing, emptyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperTransform } from './paper-transform.ts';

/** What is drawn on a card. */
export interface CardPicture {
  readonly names: PartNames;
  readonly ground: Ground;
  readonly obstacle: PlacedObstacle;
  readonly gaps: readonly GapError[];
}

/** Letter heights of lengths, mm: 14 points, and smaller where there is no room. */
const LENGTHS = [4.95, 4.25, 3.6];
/** Of the letters of ends and of the names of poles. */
const LETTER = 4.2;
const NAME = 3.6;
/** Air about what is drawn, mm. */
const AIR = 0.6;

/** The picture in its room, as large as it goes with all labels clear. */
export function cardDrawing(picture: CardPicture, room: Bounds): LabelledMarks {
  const extent = picture.obstacle.pieces.map(drawnBounds).reduce(unionBounds);
  const drawn = LENGTHS.map(
    (length) => (): LabelledMarks =>
      clearestDrawing(extent, room, (transform) => drawnCard(picture, transform, { room, length })).drawn,
  );
  let best: LabelledMarks | undefined;
  for (const draw of drawn) {
    const tried = draw();
    if (tried.isClear && tried.isBeside) return tried;
    // Without room beside the tapes, the largest letters that cover nothing.
    best = best?.isClear === true ? best : tried;
  }
  return best ?? { marks: [], isClear: false, isBeside: false };
}

function drawnCard(
  { names, ground, obstacle, gaps }: CardPicture,
  transform: PaperTransform,
  { room, length }: { readonly room: Bounds; readonly length: number },
): LabelledMarks {
  const grid = emptyGrid(room);
  const { pieces } = obstacle;
  const tapes = gaps.flatMap(({ keys, at, plan }): { stroke: Stroke; text: string }[] => {
    const grips = [
      { piece: keys[0], at: at[0] },
      { piece: keys[1], at: at[1] },
    ] as const;
    const { tape } = tapeLine(ground, { grips, kind: 'gap', side: 1 });
    if (tape === undefined) return [];
    const stroke: Stroke = [onPaper(transform, tape[0]), onPaper(transform, tape[1])];
    return [{ stroke, text: readingWords(plan, namedUnit(names)) }];
  });
  for (const piece of pieces) blockRing(grid, footprintOnPaper(transform, piece), AIR);
  for (const { stroke } of tapes) blockLine(grid, stroke, AIR);
  const letters = letterLabels(grid, { names, transform, size: LETTER }, pieces);
  const poles =
    pieces.length < 2
      ? []
      : pieces.map((piece) => {
          const text = partPieceWords(names, piece.key).replace(/^the /, '').split(' of ')[0] ?? '';
          const off = NAME + (piece.figure.width * 500) / transform.scale;
          const middle = onPaper(transform, piece.pose);
          const places = placesBesidePiece(piece, transform, off + 4);
          return labelAt(grid, { text, size: NAME, weight: 'regular' }, places, middle);
        });
  const lengths = tapes.map(({ stroke, text }) => besideTape(grid, { text, size: length, weight: 'bold' }, stroke));
  const labels = [...letters, ...poles, ...lengths];
  return {
    marks: [
      ...pieces.flatMap((piece) => pieceMarks(transform, piece)),
      ...tapes.flatMap(({ stroke }) => dimensionMarks(stroke)),
      ...labels.flatMap(({ marks }) => marks),
    ],
    isClear: labels.every(({ isClear }) => isClear),
    isBeside: lengths.every(({ isBeside }) => isBeside),
  };
}
