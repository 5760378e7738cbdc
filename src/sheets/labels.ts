/** Names on the drawing: numbered discs, START and END, the entrance, angles. Each stands where it covers nothing. */
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { footprintOnPaper } from './ground.ts';
import {
  ASCENT,
  backingRadius,
  CAP_HEIGHT,
  DESCENT,
  SMALLEST_FONT_SIZE,
  textWidth,
  type WordsMark,
} from './lettering.ts';
import {
  bestLabelPlace,
  blockBox,
  blockLine,
  type OccupancyGrid,
  paperRingContains,
  paperSegmentDistance,
} from './occupancy-grid.ts';
import { onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';

/** Letter heights, mm. */
const NUMBER_SIZE = 3.7;
const WORD_SIZE = 3.3;
/** Air round a label, mm. */
const AIR = 0.5;
/** A disc farther than this from its obstacle gets a leader line, mm. */
const FAR = 7;

function boundsAround(at: PaperPoint): Bounds {
  return { minX: at.x, maxX: at.x, minY: at.y, maxY: at.y };
}

function paperBounds(transform: PaperTransform, { bounds }: PlacedObstacle): Bounds {
  const a = onPaper(transform, { x: bounds.minX, y: bounds.minY });
  const b = onPaper(transform, { x: bounds.maxX, y: bounds.maxY });
  return { minX: Math.min(a.x, b.x), maxX: Math.max(a.x, b.x), minY: Math.min(a.y, b.y), maxY: Math.max(a.y, b.y) };
}

/** An obstacle as its outlines on paper. */
interface Outlines {
  readonly rings: readonly (readonly PaperPoint[])[];
  readonly bounds: Bounds;
}

function outlinesOf(transform: PaperTransform, obstacle: PlacedObstacle): Outlines {
  return {
    rings: obstacle.pieces.map((piece) => footprintOnPaper(transform, piece)),
    bounds: paperBounds(transform, obstacle),
  };
}

/** Distance of a place from the nearest piece of an obstacle, mm. */
function distanceTo({ rings }: Outlines, { x, y }: PaperPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    if (paperRingContains(ring, x, y)) return 0;
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      least = Math.min(least, paperSegmentDistance(x, y, ring[j] as PaperPoint, ring[i] as PaperPoint));
    }
  }
  return least;
}

function distanceToBox({ bounds }: Outlines, { x, y }: PaperPoint): number {
  const aside = Math.max(bounds.minX - x, 0, x - bounds.maxX);
  const above = Math.max(bounds.minY - y, 0, y - bounds.maxY);
  return Math.hypot(aside, above);
}

/** A number in a disc, its middle at a place. */
export function numberMark(text: string, at: PaperPoint): WordsMark {
  const baseline = { x: at.x, y: at.y + (CAP_HEIGHT * NUMBER_SIZE) / 2 };
  return {
    kind: 'words',
    at: baseline,
    text,
    size: NUMBER_SIZE,
    weight: 'bold',
    ink: 'words',
    align: 'middle',
    backing: 'disc',
  };
}

/** Where the line first meets the obstacle in this number of the go. */
function entryOf(survey: Survey, number: number): { readonly x: number; readonly y: number } | undefined {
  return survey.line.elements.find(({ leg, part }) => leg === number - 1 && part === 'obstacle')?.path[0]?.start;
}

/** The leader line from a disc to its obstacle: to the nearest corner of its pieces. */
function leaderLine({ rings }: Outlines, at: PaperPoint, radius: number): Mark<'paper'> | undefined {
  const [nearest] = rings.flat().toSorted((a, b) => distance(at, a) - distance(at, b));
  if (nearest === undefined) return undefined;
  const along = radius / distance(at, nearest);
  const from = { x: at.x + (nearest.x - at.x) * along, y: at.y + (nearest.y - at.y) * along };
  return { kind: 'line', ink: 'words', points: [from, nearest], width: 0.18 };
}

/** The numbers of the go, each in a disc by its obstacle. */
export function discMarks(survey: Survey, transform: PaperTransform, grid: OccupancyGrid): readonly Mark<'paper'>[] {
  const all = survey.obstacles.filter(({ pieces }) => pieces.length > 0);
  const outlines = new Map(all.map((obstacle) => [obstacle, outlinesOf(transform, obstacle)]));
  const wanted = [...outlines].flatMap(([{ obstacle }, outline]) =>
    (survey.numbers.get(obstacle.id) ?? []).map((number) => ({ outline, number })),
  );
  return wanted.flatMap(({ outline, number }) => {
    const radius = backingRadius(numberMark(String(number), { x: 0, y: 0 }));
    const entry = entryOf(survey, number);
    const entryAt = entry === undefined ? undefined : onPaper(transform, entry);
    const others = [...outlines.values()].filter((other) => other !== outline);
    const side = 2 * (radius + AIR);
    const { at } = bestLabelPlace(grid, {
      width: side,
      height: side,
      around: outline.bounds,
      within: 22,
      cost: (middle) => {
        const own = distanceTo(outline, middle);
        const toEntry = entryAt === undefined ? 0 : distance(middle, entryAt);
        const nearest = Math.min(...others.map((other) => distanceToBox(other, middle)), 99);
        // A number nearer to a neighbour than to its own obstacle would be read as the neighbour's.
        return own + 0.3 * toEntry + 2 * Math.max(0, own - nearest + 2);
      },
    });
    blockBox(grid, { minX: at.x - radius, maxX: at.x + radius, minY: at.y - radius, maxY: at.y + radius });
    const leader = distanceTo(outline, at) - radius > FAR ? leaderLine(outline, at, radius) : undefined;
    if (leader?.kind === 'line') blockLine(grid, leader.points, 0.3);
    return [...(leader === undefined ? [] : [leader]), numberMark(String(number), at)];
  });
}

/** How a word is set. */
type Lettering = Required<Pick<WordsMark, 'text' | 'size' | 'weight'>>;

/** A word where it stands: `middle` is that of its letters. */
interface PlacedWord {
  readonly mark: WordsMark;
  readonly middle: PaperPoint;
}

/** As near to a place as there is room, and nearer to it than to any of the `others`. */
function setBeside(
  grid: OccupancyGrid,
  { text, size, weight }: Lettering,
  near: PaperPoint,
  others: readonly PaperPoint[] = [],
): PlacedWord {
  const width = textWidth(text, size, weight);
  const { at } = bestLabelPlace(grid, {
    width: width + 2 * AIR,
    height: size * (ASCENT + DESCENT) + 2 * AIR,
    around: boundsAround(near),
    within: 30,
    cost: (middle) => {
      const aside = Math.max(0, Math.abs(middle.x - near.x) - width / 2);
      const own = Math.hypot(aside, middle.y - near.y) + 0.05 * Math.abs(middle.x - near.x);
      const nearest = Math.min(...others.map((other) => distance(other, middle)), 99);
      return own + 2 * Math.max(0, own - nearest + 2);
    },
  });
  const halfHeight = (size * (ASCENT + DESCENT)) / 2;
  const baseline = at.y + halfHeight - DESCENT * size;
  blockBox(grid, {
    minX: at.x - width / 2 - AIR,
    maxX: at.x + width / 2 + AIR,
    minY: at.y - halfHeight,
    maxY: at.y + halfHeight,
  });
  const mark: WordsMark = {
    kind: 'words',
    at: { x: at.x, y: baseline },
    text,
    size,
    weight,
    ink: 'words',
    align: 'middle',
  };
  return { mark, middle: at };
}

/** A word beside a place, as near as it finds room. */
export function wordBeside(grid: OccupancyGrid, text: string, near: PaperPoint): WordsMark {
  return setBeside(grid, { text, size: WORD_SIZE, weight: 'bold' }, near).mark;
}

/** The same in small letters, for what is said at many places. */
export function smallWordBeside(grid: OccupancyGrid, text: string, near: PaperPoint): WordsMark {
  return setBeside(grid, { text, size: SMALLEST_FONT_SIZE, weight: 'regular' }, near).mark;
}

/** The letter of a thing that has others of its like about it. */
export function letterBeside(
  grid: OccupancyGrid,
  letter: string,
  near: PaperPoint,
  others: readonly PaperPoint[],
): PlacedWord {
  return setBeside(grid, { text: letter, size: WORD_SIZE, weight: 'bold' }, near, others);
}
