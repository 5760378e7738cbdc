/**
 * A part of a set-out on paper: what lies already is bold, what is laid is in outline with its number, tapes are
 * dimension lines with their lengths, and the ends have their letters.
 */
import type { Wall } from '../core/constraints/constraint.ts';
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import { type Bounds, unionBounds } from '../core/plane/ring.ts';
import type { Ground } from '../core/setout/ground.ts';
import type { Observation, SetOutStep } from '../core/setout/setout.ts';
import { namedPiece, namedUnit, type PartNames, partPieceWords } from '../core/setout/words/place-words.ts';
import { isNothing, readingWords } from '../core/setout/words/reading-words.ts';
import { type TapeLine, tapeLine } from '../core/setout/words/tape-lines.ts';
import { besideTape, type LabelledMarks, type LabelText, labelAt, numberedDisc } from './dimension-labels.ts';
import { dimensionMarks, headMark, letterLabels, placesBesidePiece, type Stroke, TAPE } from './dimension-lines.ts';
import { drawnBounds, footprintOnPaper, pieceMarks } from './ground.ts';
import { SMALLEST_FONT_SIZE, textWidth, type WordsMark, wordsBounds } from './lettering.ts';
import { northSign } from './north-sign.ts';
import { blockBox, blockLine, blockRing, emptyGrid, type OccupancyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';

/** What is drawn of a part: some of its steps, and what they hold. */
export interface SetOutPicture {
  readonly names: PartNames;
  readonly ground: Ground;
  readonly steps: readonly SetOutStep[];
}

/** Letter heights in a drawing, mm. */
export interface DrawingSizes {
  readonly length: number;
  readonly letter: number;
}

const HELD = { ink: 'outline', width: 1.1 } as const;
const GUIDE = { ink: 'words', width: 0.25, dash: [1.4, 1] } as const;
/** Of a tape to a wall so much is drawn, mm. */
const STUB = 11;
const SCALE = SMALLEST_FONT_SIZE;
/** Air about what is drawn, mm. */
const AIR = 0.6;

/** Keys of what a picture shows: what its steps lay, and what they hold. */
function shownPieces({ names, steps }: SetOutPicture): readonly PlacedPiece[] {
  const keys = steps.flatMap(({ piece, held }) => [piece, ...held.filter((each) => !each.startsWith('wall '))]);
  return [...new Set(keys)].map((key) => namedPiece(names, key));
}

/** What has to be on the drawing, metres. */
export function pictureExtent(picture: SetOutPicture): Bounds {
  return shownPieces(picture).map(drawnBounds).reduce(unionBounds);
}

/** What lies when the first of its steps begins: it is bold. The first piece of a part is bold too: all the others come from it. */
function boldPieces({ steps }: SetOutPicture, shown: readonly PlacedPiece[]): ReadonlySet<string> {
  const laid = new Set(steps.map(({ piece }) => piece));
  const first = steps.find(({ number }) => number === 1);
  return new Set([...shown.map(({ key }) => key).filter((key) => !laid.has(key)), ...(first ? [first.piece] : [])]);
}

function heldMarks(transform: PaperTransform, piece: PlacedPiece): readonly Mark<'paper'>[] {
  const ring = footprintOnPaper(transform, piece);
  return [{ kind: 'line', points: [...ring, ...ring.slice(0, 1)], ...HELD }];
}

/** A tape with its label, on paper. */
interface PaperTape {
  readonly stroke: Stroke;
  readonly isStub: boolean;
  readonly text: string;
}

/** The end of a tape that leads off to a wall: so much of it as is drawn, from the piece on. */
function stub(from: PaperPoint, to: PaperPoint): Stroke {
  const far = distance(from, to);
  const share = far === 0 ? 0 : Math.min(1, STUB / far);
  return [from, { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }];
}

function wallOf({ grips: [, second] }: Observation): Wall | undefined {
  return 'wall' in second ? second.wall : undefined;
}

function paperTape(
  observation: Observation,
  { tape, guide }: TapeLine,
  { names, transform }: { readonly names: PartNames; readonly transform: PaperTransform },
): PaperTape | undefined {
  if (tape === undefined || isNothing(observation)) return undefined;
  const figure = readingWords(Math.abs(observation.reading), namedUnit(names));
  const [a, b] = tape.map((at) => onPaper(transform, at)) as [PaperPoint, PaperPoint];
  const wall = wallOf(observation);
  if (wall === undefined) return { stroke: [a, b], isStub: false, text: figure };
  if (observation.kind !== 'along-wall') return { stroke: stub(b, a), isStub: true, text: `${figure} to ${wall} wall` };
  const [mark, point] = (guide ?? []).map((at) => onPaper(transform, at));
  if (mark === undefined || point === undefined) return undefined;
  return { stroke: stub(point, mark), isStub: true, text: `${figure} along ${wall} wall` };
}

/** Tapes that say the same at the same place are drawn once. */
function withoutTwins(tapes: readonly PaperTape[]): readonly PaperTape[] {
  const isSame = (a: PaperTape, b: PaperTape): boolean =>
    a.text === b.text && a.stroke.every((at, i) => distance(at, b.stroke[i] ?? at) < 0.5);
  return tapes.filter((each, i) => !tapes.slice(0, i).some((before) => isSame(before, each)));
}

function guideMarks(
  lines: readonly TapeLine[],
  transform: PaperTransform,
): readonly Extract<Mark<'paper'>, { kind: 'line' }>[] {
  return lines.flatMap(({ guide, tape }) =>
    guide === undefined ||
    (tape !== undefined && guide.length === 2 && distance(guide[0] ?? tape[0], guide[1] ?? tape[1]) < 0.02)
      ? []
      : [{ kind: 'line' as const, points: guide.map((at) => onPaper(transform, at)), ...GUIDE }],
  );
}

/** Whether some piece of the part has another number than its step: then names stand beside the numbers. */
function isNamed({ names, steps }: SetOutPicture): boolean {
  return steps.some(({ piece, number }) => !partPieceWords(names, piece).split(' ').includes(String(number)));
}

/** The picture under its transform. `room` is the part of the page that it may use. */
export function setOutDrawing(
  picture: SetOutPicture,
  transform: PaperTransform,
  { room, sizes }: { readonly room: Bounds; readonly sizes: DrawingSizes },
): LabelledMarks {
  const { names, ground, steps } = picture;
  const grid = emptyGrid(room);
  const pieces = shownPieces(picture);
  const bold = boldPieces(picture, pieces);
  const observations = steps.flatMap((step) => step.observations);
  const lines = observations.map((each) => tapeLine(ground, each));
  const tapes = withoutTwins(
    observations.flatMap((each, i) => paperTape(each, lines[i] ?? {}, { names, transform }) ?? []),
  );
  const guides = guideMarks(
    lines.filter((_, i) => wallOf(observations[i] as Observation) === undefined),
    transform,
  );
  for (const piece of pieces)
    blockRing(grid, footprintOnPaper(transform, piece), bold.has(piece.key) ? AIR + 0.5 : AIR);
  for (const { stroke } of tapes) blockLine(grid, stroke, AIR);
  for (const { points } of guides) blockLine(grid, points, AIR / 2);

  const north = northSign(grid, { x: room.minX + 5, y: room.minY + 6 }, transform);
  const scale = scaleMark(grid, room, transform);
  const letters = letterLabels(grid, { names, transform, size: sizes.letter }, pieces);
  const named = isNamed(picture);
  const discs = steps.map(({ piece: key, number }) => {
    const piece = namedPiece(names, key);
    const name = named ? (partPieceWords(names, key).replace(/^the /, '').split(' of ')[0] ?? '') : '';
    const middle = onPaper(transform, piece.pose);
    const off = 0.84 * sizes.letter + 2.4 + (piece.figure.width * 500) / transform.scale;
    return numberedDisc(
      grid,
      { number: String(number), name, size: sizes.letter },
      placesBesidePiece(piece, transform, off),
      middle,
    );
  });
  const lengths = tapes.map(({ stroke, text, isStub }) => {
    const label = { text, size: isStub ? Math.min(sizes.length, 4.2) : sizes.length, weight: 'bold' } as const;
    return isStub ? labelAt(grid, label, stubPlaces(stroke, label), stroke[1]) : besideTape(grid, label, stroke);
  });
  const labels = [...letters, ...discs, ...lengths];
  return {
    marks: [
      ...pieces.flatMap((piece) => pieceMarks(transform, piece)),
      ...pieces.filter(({ key }) => bold.has(key)).flatMap((piece) => heldMarks(transform, piece)),
      ...guides,
      ...north,
      scale,
      ...tapes.flatMap(({ stroke, isStub }) =>
        isStub
          ? [
              { kind: 'line' as const, points: stroke, ...TAPE },
              headMark(stroke[1], Math.atan2(stroke[1].y - stroke[0].y, stroke[1].x - stroke[0].x)),
            ]
          : dimensionMarks(stroke),
      ),
      ...labels.flatMap(({ marks }) => marks),
    ],
    isClear: labels.every(({ isClear }) => isClear),
    isBeside: lengths.every(({ isBeside }) => isBeside),
  };
}

/** The scale in the lower left corner of the room; nothing else is set there. */
function scaleMark(grid: OccupancyGrid, { minX, maxY }: Bounds, transform: PaperTransform): WordsMark {
  const text = `1:${transform.scale}`;
  const mark: WordsMark = {
    kind: 'words',
    at: { x: minX, y: maxY - 1 },
    text,
    size: SCALE,
    ink: 'words',
    align: 'start',
  };
  blockBox(grid, wordsBounds(mark));
  return mark;
}

/** Beyond the arrow of a tape that leads off, then over and under it. */
function stubPlaces([from, to]: Stroke, { text, size, weight }: LabelText): readonly PaperPoint[] {
  const long = distance(from, to) || 1;
  const [ux, uy] = [(to.x - from.x) / long, (to.y - from.y) / long];
  const [halfWidth, halfHeight] = [textWidth(text, size, weight) / 2 + 1, size * 0.55 + 0.8];
  const reach = Math.abs(ux) * halfWidth + Math.abs(uy) * halfHeight + 0.6;
  const beyond = { x: to.x + ux * reach, y: to.y + uy * reach };
  const aside = Math.abs(ux) * halfHeight + Math.abs(uy) * halfWidth + 0.6;
  const beside = [1, -1].flatMap((side) =>
    [0.5, 1, 1.5, 0].map((far) => ({
      x: from.x + ux * long * far + side * -uy * aside,
      y: from.y + uy * long * far + side * ux * aside,
    })),
  );
  const out = [1, -1].map((side) => ({
    x: from.x + ux * (halfWidth * Math.abs(ux) + 1) + side * -uy * aside,
    y: from.y + uy * (halfHeight * Math.abs(uy) + 1) + side * ux * aside,
  }));
  return [beyond, ...out, ...beside];
}
