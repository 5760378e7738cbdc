/** Names on the drawing: numbered discs, START and END, the entrance, angles. Each stands where it covers nothing. */
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { ringPointDistance } from '../core/plane/segment.ts';
import type { Survey } from '../core/survey.ts';
import { type Frame, onGround, onPaper, type PaperPoint, perMetre } from './frame.ts';
import { backingRadius, CAP_HEIGHT, DEPTH, RISE, textWidth, type WordsMark } from './lettering.ts';
import { bestPlace, blockBox, blockLine, type Room } from './room.ts';

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

/** Distance on paper from a place to the nearest piece of an obstacle, mm. */
function distanceTo(frame: Frame, obstacle: PlacedObstacle, at: PaperPoint): number {
  const ground = onGround(frame, at);
  const least = Math.min(...obstacle.pieces.map(({ footprint }) => ringPointDistance(footprint, ground)));
  return least * perMetre(frame);
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
function tie(frame: Frame, obstacle: PlacedObstacle, at: PaperPoint, radius: number): Mark<'paper'> | undefined {
  const corners = obstacle.pieces.flatMap(({ footprint }) => footprint.map((corner) => onPaper(frame, corner)));
  const [nearest] = corners.toSorted((a, b) => distance(at, a) - distance(at, b));
  if (nearest === undefined) return undefined;
  const along = radius / distance(at, nearest);
  const from = { x: at.x + (nearest.x - at.x) * along, y: at.y + (nearest.y - at.y) * along };
  return { kind: 'line', ink: 'words', points: [from, nearest], width: 0.18 };
}

/** The numbers of the go, each in a disc by its obstacle. */
export function discMarks(survey: Survey, frame: Frame, room: Room): readonly Mark<'paper'>[] {
  const wanted = survey.obstacles.flatMap((obstacle) =>
    (survey.numbers.get(obstacle.obstacle.id) ?? []).map((number) => ({ obstacle, number })),
  );
  return wanted.flatMap(({ obstacle, number }) => {
    const radius = backingRadius(numberMark(String(number), { x: 0, y: 0 }));
    const entry = entryOf(survey, number);
    const entryAt = entry === undefined ? undefined : onPaper(frame, entry);
    const others = survey.obstacles.filter((other) => other !== obstacle && other.pieces.length > 0);
    const side = 2 * (radius + AIR);
    const { at } = bestPlace(room, {
      width: side,
      height: side,
      around: paperBounds(frame, obstacle),
      reach: 22,
      cost: (middle) => {
        const own = distanceTo(frame, obstacle, middle);
        const toEntry = entryAt === undefined ? 0 : distance(middle, entryAt);
        const nearest = Math.min(...others.map((other) => distanceTo(frame, other, middle)), 99);
        // A number nearer to a neighbour than to its own obstacle would be read as the neighbour's.
        return own + 0.3 * toEntry + 2 * Math.max(0, own - nearest + 2);
      },
    });
    blockBox(room, { minX: at.x - radius, maxX: at.x + radius, minY: at.y - radius, maxY: at.y + radius });
    const tied = distanceTo(frame, obstacle, at) - radius > FAR ? tie(frame, obstacle, at, radius) : undefined;
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
