/** Names on the drawing: numbered discs, START and END, the entrance, angles. Each stands where it covers nothing. */
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { footprintOnPaper } from './ground.ts';
import { backingRadius, CAP_HEIGHT, DEPTH, RISE, textWidth, type WordsMark } from './lettering.ts';
import { bestPlace, blockBox, blockLine, pointToSegment, type Room, ringHoldsPlace } from './occupancy-grid.ts';
import { type Frame, onPaper, type PaperPoint } from './paper-transform.ts';

/** Letter heights, mm. */
const NUMBER = 3.7;
const SIGN = 3.3;
/** Air round a label, mm. */
const AIR = 0.5;
/** A disc farther than this from its obstacle is tied to it by a thin line, mm. */
const FAR = 7;

function boundsAround(at: PaperPoint): Bounds {
  return { minX: at.x, maxX: at.x, minY: at.y, maxY: at.y };
}

function paperBounds(frame: Frame, { bounds }: PlacedObstacle): Bounds {
  const a = onPaper(frame, { x: bounds.minX, y: bounds.minY });
  const b = onPaper(frame, { x: bounds.maxX, y: bounds.maxY });
  return { minX: Math.min(a.x, b.x), maxX: Math.max(a.x, b.x), minY: Math.min(a.y, b.y), maxY: Math.max(a.y, b.y) };
}

/** An obstacle as its outlines on paper. */
interface Outlines {
  readonly rings: readonly (readonly PaperPoint[])[];
  readonly bounds: Bounds;
}

function outlinesOf(frame: Frame, obstacle: PlacedObstacle): Outlines {
  return {
    rings: obstacle.pieces.map((piece) => footprintOnPaper(frame, piece)),
    bounds: paperBounds(frame, obstacle),
  };
}

/** Distance of a place from the nearest piece of an obstacle, mm. */
function distanceTo({ rings }: Outlines, { x, y }: PaperPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    if (ringHoldsPlace(ring, x, y)) return 0;
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      least = Math.min(least, pointToSegment(x, y, ring[j] as PaperPoint, ring[i] as PaperPoint));
    }
  }
  return least;
}

function distanceToBox({ bounds }: Outlines, { x, y }: PaperPoint): number {
  const aside = Math.max(bounds.minX - x, 0, x - bounds.maxX);
  const above = Math.max(bounds.minY - y, 0, y - bounds.maxY);
  return Math.hypot(aside, above);
}

function numberMark(text: string, at: PaperPoint): WordsMark {
  const baseline = { x: at.x, y: at.y + (CAP_HEIGHT * NUMBER) / 2 };
  return {
    kind: 'words',
    at: baseline,
    text,
    size: NUMBER,
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

/** The line that ties a disc to its obstacle: to the nearest corner of its pieces. */
function tie({ rings }: Outlines, at: PaperPoint, radius: number): Mark<'paper'> | undefined {
  const [nearest] = rings.flat().toSorted((a, b) => distance(at, a) - distance(at, b));
  if (nearest === undefined) return undefined;
  const along = radius / distance(at, nearest);
  const from = { x: at.x + (nearest.x - at.x) * along, y: at.y + (nearest.y - at.y) * along };
  return { kind: 'line', ink: 'words', points: [from, nearest], width: 0.18 };
}

/** The numbers of the go, each in a disc by its obstacle. */
export function discMarks(survey: Survey, frame: Frame, room: Room): readonly Mark<'paper'>[] {
  const all = survey.obstacles.filter(({ pieces }) => pieces.length > 0);
  const outlines = new Map(all.map((obstacle) => [obstacle, outlinesOf(frame, obstacle)]));
  const wanted = [...outlines].flatMap(([{ obstacle }, outline]) =>
    (survey.numbers.get(obstacle.id) ?? []).map((number) => ({ outline, number })),
  );
  return wanted.flatMap(({ outline, number }) => {
    const radius = backingRadius(numberMark(String(number), { x: 0, y: 0 }));
    const entry = entryOf(survey, number);
    const entryAt = entry === undefined ? undefined : onPaper(frame, entry);
    const others = [...outlines.values()].filter((other) => other !== outline);
    const side = 2 * (radius + AIR);
    const { at } = bestPlace(room, {
      width: side,
      height: side,
      around: outline.bounds,
      reach: 22,
      cost: (middle) => {
        const own = distanceTo(outline, middle);
        const toEntry = entryAt === undefined ? 0 : distance(middle, entryAt);
        const nearest = Math.min(...others.map((other) => distanceToBox(other, middle)), 99);
        // A number nearer to a neighbour than to its own obstacle would be read as the neighbour's.
        return own + 0.3 * toEntry + 2 * Math.max(0, own - nearest + 2);
      },
    });
    blockBox(room, { minX: at.x - radius, maxX: at.x + radius, minY: at.y - radius, maxY: at.y + radius });
    const tied = distanceTo(outline, at) - radius > FAR ? tie(outline, at, radius) : undefined;
    if (tied?.kind === 'line') blockLine(room, tied.points, 0.3);
    return [...(tied === undefined ? [] : [tied]), numberMark(String(number), at)];
  });
}

/** A word beside a place, as near as it finds room. */
export function wordBeside(room: Room, text: string, near: PaperPoint): Mark<'paper'> {
  const width = textWidth(text, SIGN, 'bold');
  const { at } = bestPlace(room, {
    width: width + 2 * AIR,
    height: SIGN * (RISE + DEPTH) + 2 * AIR,
    around: boundsAround(near),
    reach: 30,
    cost: (middle) => {
      const aside = Math.max(0, Math.abs(middle.x - near.x) - width / 2);
      return Math.hypot(aside, middle.y - near.y) + 0.05 * Math.abs(middle.x - near.x);
    },
  });
  const halfHeight = (SIGN * (RISE + DEPTH)) / 2;
  const baseline = at.y + halfHeight - DEPTH * SIGN;
  blockBox(room, {
    minX: at.x - width / 2 - AIR,
    maxX: at.x + width / 2 + AIR,
    minY: at.y - halfHeight,
    maxY: at.y + halfHeight,
  });
  return {
    kind: 'words',
    at: { x: at.x, y: baseline },
    text,
    size: SIGN,
    weight: 'bold',
    ink: 'words',
    align: 'middle',
  };
}
