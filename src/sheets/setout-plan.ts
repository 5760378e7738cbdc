/** The arena of a set-out on paper: the first piece of every part in bold with its tapes from the walls, and the rest in outline. */
import type { Wall } from '../core/constraints/constraint.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Ground } from '../core/setout/ground.ts';
import type { Observation, SetOut, SetOutPart } from '../core/setout/setout.ts';
import { isNothing, readingWords } from '../core/setout/words/reading-words.ts';
import { tapeLine } from '../core/setout/words/tape-lines.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { besideTape, labelAt, numberedDisc } from './dimension-labels.ts';
import { entranceSign } from './entrance.ts';
import { blockGround, footprintOnPaper, pieceMarks, railMarks } from './ground.ts';
import { wordBeside } from './labels.ts';
import { blockLine, blockRing, emptyGrid, type OccupancyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { arrowhead } from './travel.ts';

/** A tape from a wall, and the first piece of a part. Millimetres. */
export const WALL_TAPE = { ink: 'words', width: 0.25 } as const;
export const LAID_FIRST = { ink: 'outline', width: 0.9 } as const;
const WALL_GUIDE = { ...WALL_TAPE, dash: [1.2, 1] } as const;
const READING = 3.6;
const NUMBER = 4.6;
const WALL_NAME = 3.6;
const ARROWHEAD = 1.6;
const AIR = 0.5;

interface WallTape {
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  readonly text: string;
  readonly guide: readonly PaperPoint[];
}

/** The tapes of a first piece. Two that read the same from one wall are drawn once: the words name both ends. */
function wallTapes(part: SetOutPart, { plan, ground, transform }: Drawn): readonly WallTape[] {
  const isTold = (each: Observation): boolean => 'wall' in each.grips[1] && !isNothing(each);
  const all = part.steps[0].observations.filter(isTold);
  const isTwin = (a: Observation, b: Observation): boolean =>
    a.kind === b.kind && a.reading === b.reading && wallOf(a) === wallOf(b);
  return all
    .filter((each, i) => !all.slice(0, i).some((before) => isTwin(before, each)))
    .flatMap((each) => {
      const { tape, guide = [] } = tapeLine(ground, each);
      if (tape === undefined) return [];
      const [from, to] = tape.map((at) => onPaper(transform, at)) as [PaperPoint, PaperPoint];
      const text = readingWords(Math.abs(each.reading), plan.crew.marked);
      return [{ from, to, text, guide: guide.map((at) => onPaper(transform, at)) }];
    });
}

function wallOf({ grips: [, second] }: Observation): Wall | undefined {
  return 'wall' in second ? second.wall : undefined;
}

interface Drawn {
  readonly plan: SetOut;
  readonly ground: Ground;
  readonly transform: PaperTransform;
}

function tapeMarks({ from, to, guide }: WallTape): readonly Mark<'paper'>[] {
  const heading = Math.atan2(to.y - from.y, to.x - from.x);
  const back = 0.6 * ARROWHEAD;
  const at = { x: to.x - back * Math.cos(heading), y: to.y - back * Math.sin(heading) };
  const head: readonly Mark<'paper'>[] =
    distance(from, to) < 2 * ARROWHEAD ? [] : [{ kind: 'area', ink: 'words', ring: arrowhead(at, heading, ARROWHEAD) }];
  const helped: readonly Mark<'paper'>[] = guide.length < 2 ? [] : [{ kind: 'line', points: guide, ...WALL_GUIDE }];
  return [{ kind: 'line', points: [from, to], ...WALL_TAPE }, ...head, ...helped];
}

/** The names of the walls, inside the rail and near their middles. */
function wallNames(grid: OccupancyGrid, ground: Ground, transform: PaperTransform): readonly Mark<'paper'>[] {
  const { length, width } = ground.arena;
  const middles: readonly (readonly [Wall, number, number])[] = [
    ['south', length / 2, 0],
    ['east', length, width / 2],
    ['north', length / 2, width],
    ['west', 0, width / 2],
  ];
  const centre = onPaper(transform, { x: length / 2, y: width / 2 });
  return middles.flatMap(([wall, x, y]) => {
    const at = onPaper(transform, { x, y });
    const isSide = Math.abs(at.x - centre.x) > Math.abs(at.y - centre.y);
    const inward = isSide ? { x: Math.sign(centre.x - at.x) * 13, y: 0 } : { x: 0, y: Math.sign(centre.y - at.y) * 4 };
    const place = { x: at.x + inward.x, y: at.y + inward.y };
    const label = { text: `${capitalized(wall)} wall`, size: WALL_NAME, weight: 'regular' } as const;
    return labelAt(grid, label, [place], place).marks;
  });
}

/** The arena under its transform; labels keep inside `bounds`. */
export function setOutPlanDrawing(survey: Survey, drawn: Drawn, bounds: Bounds): readonly Mark<'paper'>[] {
  const { plan, transform, ground } = drawn;
  const { arena } = survey.course;
  const grid = emptyGrid(bounds);
  const pieceOf = (key: string) => ground.pieces.get(key);
  const firsts = plan.parts.flatMap(({ steps: [first] }) => pieceOf(first.piece) ?? []);
  const tapes = plan.parts.map((part) => wallTapes(part, drawn));
  const entrance = entranceSign(arena, transform);
  blockGround(grid, { arena, pieces: survey.pieces }, transform);
  blockRing(grid, entrance.ring, AIR);
  for (const { from, to, guide } of tapes.flat()) {
    blockLine(grid, [from, to], AIR);
    if (guide.length > 1) blockLine(grid, guide, AIR / 2);
  }
  const discs = plan.parts.flatMap(({ steps: [first] }, i) => {
    const piece = pieceOf(first.piece);
    if (piece === undefined) return [];
    const at = onPaper(transform, piece.pose);
    return numberedDisc(grid, { number: String(i + 1), name: '', size: NUMBER }, [], at).marks;
  });
  // Near the piece a reading is found by whoever lays it.
  const readings = tapes.flat().flatMap(({ from, to, text }) => {
    const near = { x: to.x + (from.x - to.x) * 0.6, y: to.y + (from.y - to.y) * 0.6 };
    return besideTape(grid, { text, size: READING, weight: 'bold' }, [near, to]).marks;
  });
  return [
    ...railMarks(transform, arena),
    ...survey.pieces.flatMap((piece) => pieceMarks(transform, piece)),
    ...firsts.map((piece): Mark<'paper'> => {
      const ring = footprintOnPaper(transform, piece);
      return { kind: 'line', points: [...ring, ...ring.slice(0, 1)], ...LAID_FIRST };
    }),
    ...tapes.flat().flatMap(tapeMarks),
    { kind: 'line', ink: 'words', points: entrance.ring, width: 0.35 },
    ...discs,
    ...readings,
    wordBeside(grid, 'Entrance', entrance.at),
    ...wallNames(grid, ground, transform),
  ];
}
