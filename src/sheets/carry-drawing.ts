/**
 * A change-over on paper: the layout that is wanted in full, what has to move in dashes where it lies now, an arrow for
 * each carry, and its number in a disc. `+` comes from the truck, `−` goes to it.
 */
import { type CarryArrow, carryArrows } from '../core/change/carry-arrow.ts';
import type { ChangeOver } from '../core/change/change-over.ts';
import type { Arena } from '../core/course/course.ts';
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { entranceSign } from './entrance.ts';
import { AIR, blockGround, footprintOnPaper, pieceMarks, railMarks } from './ground.ts';
import { numberMark, smallWordBeside, wordBeside } from './labels.ts';
import { backingRadius } from './lettering.ts';
import { bestLabelPlace, blockBox, blockLine, blockRing, emptyGrid, type OccupancyGrid } from './occupancy-grid.ts';
import { onPaper, type PaperPoint, type PaperTransform } from './paper-transform.ts';
import { arrowhead } from './travel.ts';

/** What is drawn: `names` stands by each obstacle of the layout that is wanted. */
export interface CarryPicture {
  readonly arena: Arena;
  readonly plan: ChangeOver;
  readonly before: readonly PlacedPiece[];
  readonly after: readonly PlacedPiece[];
  readonly names: readonly { readonly title: string; readonly pieces: readonly PlacedPiece[] }[];
}

/** Dashes of what lies elsewhere now, and of a carry that waits for a later pass, mm. */
export const OLD_PLACE = { ink: 'outline', width: 0.3, dash: [1.1, 0.8] } as const;
export const CARRIED = { ink: 'words', width: 0.35 } as const;
export const CARRIED_LATER = { ...CARRIED, dash: [2.6, 1.1] } as const;
const ARROWHEAD = 2.4;
/** A shorter arrow is all head, mm. */
const SHORTEST_ARROW = 2;
/** How far from the middle of its arrow a number looks for room, mm. */
const SEARCHED = 24;
/** Half of the truck's sign, mm. */
const TRUCK = { x: 4.2, y: 2.2 };

/** An arrow on paper. */
type PaperCarry = Pick<CarryArrow, 'text' | 'isLater'> & { readonly from?: PaperPoint; readonly to?: PaperPoint };

function paperCarry(transform: PaperTransform, { text, isLater, from, to }: CarryArrow): PaperCarry {
  return {
    text,
    isLater,
    ...(from === undefined ? {} : { from: onPaper(transform, from) }),
    ...(to === undefined ? {} : { to: onPaper(transform, to) }),
  };
}

function middleOf({ from, to }: PaperCarry): PaperPoint | undefined {
  if (from === undefined || to === undefined) return from ?? to;
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

function arrowMarks({ from, to, isLater }: PaperCarry): readonly Mark<'paper'>[] {
  if (from === undefined || to === undefined || distance(from, to) < SHORTEST_ARROW) return [];
  const heading = Math.atan2(to.y - from.y, to.x - from.x);
  // The head ends at the place; the line stops inside the head, so that its tip stays sharp.
  const at = { x: to.x - 0.6 * ARROWHEAD * Math.cos(heading), y: to.y - 0.6 * ARROWHEAD * Math.sin(heading) };
  return [
    { kind: 'line', points: [from, at], ...(isLater ? CARRIED_LATER : CARRIED) },
    { kind: 'area', ink: CARRIED.ink, ring: arrowhead(at, heading, ARROWHEAD) },
  ];
}

/** Distance from a place to the arrow that it numbers, mm. */
function distanceToCarry({ from, to }: PaperCarry, at: PaperPoint): number {
  if (from === undefined || to === undefined) {
    const only = from ?? to;
    return only === undefined ? 0 : distance(only, at);
  }
  const along = { x: to.x - from.x, y: to.y - from.y };
  const square = along.x ** 2 + along.y ** 2;
  const t = square === 0 ? 0 : ((at.x - from.x) * along.x + (at.y - from.y) * along.y) / square;
  const near = Math.min(1, Math.max(0, t));
  return Math.hypot(from.x + along.x * near - at.x, from.y + along.y * near - at.y);
}

/** The number of a carry, on its arrow where there is room and near its middle. */
function numberMarks(grid: OccupancyGrid, carry: PaperCarry, others: readonly PaperCarry[]): readonly Mark<'paper'>[] {
  const middle = middleOf(carry);
  if (middle === undefined) return [];
  const radius = backingRadius(numberMark(carry.text, middle));
  const near = others.filter((other) => distanceToCarry(other, middle) < 2 * SEARCHED);
  const { at } = bestLabelPlace(grid, {
    width: 2 * radius,
    height: 2 * radius,
    around: { minX: middle.x, maxX: middle.x, minY: middle.y, maxY: middle.y },
    within: SEARCHED,
    cost: (place) => {
      const own = distanceToCarry(carry, place);
      const nearest = Math.min(...near.map((other) => distanceToCarry(other, place)), 99);
      // A number nearer to a neighbour's arrow would be read as the neighbour's.
      return 1.5 * own + 0.25 * distance(place, middle) + 2 * Math.max(0, own - nearest + 1);
    },
  });
  blockBox(grid, { minX: at.x - radius, maxX: at.x + radius, minY: at.y - radius, maxY: at.y + radius });
  return [numberMark(carry.text, at)];
}

/** The truck: a box with its cab, at its place. */
function truckMarks(transform: PaperTransform, { crew }: ChangeOver, grid: OccupancyGrid): readonly Mark<'paper'>[] {
  const at = onPaper(transform, crew.truckAt);
  const ring = [
    { x: at.x - TRUCK.x, y: at.y - TRUCK.y },
    { x: at.x + TRUCK.x, y: at.y - TRUCK.y },
    { x: at.x + TRUCK.x, y: at.y + TRUCK.y },
    { x: at.x - TRUCK.x, y: at.y + TRUCK.y },
  ];
  const cab = at.x + TRUCK.x * 0.45;
  blockRing(grid, ring, AIR);
  return [
    { kind: 'line', ink: 'words', width: 0.4, points: [...ring, { x: at.x - TRUCK.x, y: at.y - TRUCK.y }] },
    {
      kind: 'line',
      ink: 'words',
      width: 0.4,
      points: [
        { x: cab, y: at.y - TRUCK.y },
        { x: cab, y: at.y + TRUCK.y },
      ],
    },
    wordBeside(grid, 'Truck', at),
  ];
}

/** What lies now where it will not stay. */
function oldPlaces(transform: PaperTransform, { plan, before }: CarryPicture): readonly Mark<'paper'>[] {
  const leaving = new Set(plan.carries.flatMap(({ from }) => (from.kind === 'ground' ? [from.load.key] : [])));
  return before
    .filter(({ key }) => leaving.has(key))
    .flatMap((piece): Mark<'paper'>[] => {
      const ring = footprintOnPaper(transform, piece);
      const [first] = ring;
      return first === undefined ? [] : [{ kind: 'line', points: [...ring, first], ...OLD_PLACE }];
    });
}

/** The change-over drawn under its transform; `bounds` is the part of the page that labels may use. */
export function carryDrawing(
  picture: CarryPicture,
  transform: PaperTransform,
  bounds: Bounds,
): readonly Mark<'paper'>[] {
  const { arena, plan, after, names } = picture;
  const grid = emptyGrid(bounds);
  const carries = carryArrows(plan).map((arrow) => paperCarry(transform, arrow));
  blockGround(grid, { arena, pieces: after }, transform);
  for (const { from, to } of carries) if (from && to) blockLine(grid, [from, to], 0.2);
  const entrance = entranceSign(arena, transform);
  blockRing(grid, entrance.ring, AIR);
  const truck = truckMarks(transform, plan, grid);
  // Numbers first: a name may stand farther off than a number.
  const numbers = carries.flatMap((carry) =>
    numberMarks(
      grid,
      carry,
      carries.filter((other) => other !== carry),
    ),
  );
  const labels = names.flatMap(({ title, pieces }) => {
    const points = pieces.map(({ pose }) => onPaper(transform, pose));
    if (points.length === 0) return [];
    const x = points.reduce((sum, at) => sum + at.x, 0) / points.length;
    const y = points.reduce((sum, at) => sum + at.y, 0) / points.length;
    return [smallWordBeside(grid, title, { x, y })];
  });
  return [
    ...railMarks(transform, arena),
    ...oldPlaces(transform, picture),
    ...after.flatMap((piece) => pieceMarks(transform, piece)),
    { kind: 'line', ink: 'words', points: entrance.ring, width: 0.35 },
    ...carries.flatMap(arrowMarks),
    ...truck,
    wordBeside(grid, 'Entrance', entrance.at),
    ...labels,
    ...numbers,
  ];
}
