import { type Course, currentLayout, type Layout, type Stock } from './course/course.ts';
import { type PlacedObstacle, type PlacedPiece, placedObstacle } from './course/placed.ts';
import type { Horse } from './horses/horse.ts';
import { horseById, ledHorse, STOCK_HORSE } from './horses/horses.ts';
import { memoizeByIdentity } from './memo/by-identity.ts';
import { type BestWays, bestWays } from './ride/best-ways.ts';
import { type ClassClock, classClock } from './ride/class-clock.ts';
import type { Line } from './ride/line.ts';
import { lineOfTravel } from './ride/line-of-travel.ts';
import { markerLetters } from './ride/marker-letters.ts';

/** How many pieces of one line of the truck list the layout uses. `stock` is null for pieces that no line provides. */
export interface TruckUse {
  readonly stock: Stock | null;
  readonly title: string;
  readonly used: number;
  readonly left: number;
  /** Keys of the pieces taken from it. */
  readonly keys: readonly string[];
}

/** Everything measurable about the current layout of a course, worked out once. */
export interface Survey {
  readonly course: Course;
  readonly layout: Layout;
  readonly horse: Horse;
  readonly obstacles: readonly PlacedObstacle[];
  readonly pieces: readonly PlacedPiece[];
  /** By obstacle id: the numbers it has in the go, 1 first; several when it is ridden more than once. */
  readonly numbers: ReadonlyMap<string, readonly number[]>;
  /** By piece key: the letters of the markers that the words name one by one. */
  readonly letters: ReadonlyMap<string, string>;
  readonly line: Line;
  /** What the go costs the class. */
  readonly classClock: ClassClock;
  readonly truck: readonly TruckUse[];
}

/** Sizes are the same within this, metres: a file's last digit is no other pole. */
const SAME_SIZE = 1e-6;

function matches(stock: Stock, { piece }: PlacedPiece): boolean {
  if (stock.kind !== piece.kind) return false;
  return Object.entries(stock.values).every(([key, wanted]) => {
    const has = piece.values[key];
    return typeof wanted === 'number' && typeof has === 'number' ? Math.abs(has - wanted) <= SAME_SIZE : has === wanted;
  });
}

/** Each piece is taken from the first line of the list that has its kind and sizes, even when that line is used up. */
export function truckUse(truck: readonly Stock[], pieces: readonly PlacedPiece[]): readonly TruckUse[] {
  const taken = new Map<Stock | null, string[]>();
  for (const piece of pieces) {
    const stock = truck.find((line) => matches(line, piece)) ?? null;
    const keys = taken.get(stock);
    if (keys === undefined) taken.set(stock, [piece.key]);
    else keys.push(piece.key);
  }
  const listed = truck.map((stock): TruckUse => {
    const keys = taken.get(stock) ?? [];
    return { stock, title: stock.title, used: keys.length, left: stock.count - keys.length, keys };
  });
  const strangers = taken.get(null);
  if (strangers === undefined) return listed;
  const used = strangers.length;
  return [...listed, { stock: null, title: 'Not on the truck', used, left: -used, keys: strangers }];
}

/** By obstacle id: the numbers it has in the go, 1 first. */
export function numbersOf(layout: Layout): ReadonlyMap<string, readonly number[]> {
  const numbers = new Map<string, readonly number[]>();
  for (const [i, { obstacle }] of layout.ride.legs.entries()) {
    numbers.set(obstacle, [...(numbers.get(obstacle) ?? []), i + 1]);
  }
  return numbers;
}

function surveyOf(course: Course, before?: Line): Survey {
  const layout = currentLayout(course);
  const named = horseById(course.horse) ?? STOCK_HORSE;
  const horse = course.class.level === 'led' ? ledHorse(named) : named;
  const obstacles = layout.obstacles.map(placedObstacle);
  const pieces = obstacles.flatMap((obstacle) => obstacle.pieces);
  const { arena, truck } = course;
  const line = lineOfTravel({ arena, horse, layout, obstacles, leadChange: course.class.leadChange }, before);
  return {
    course,
    layout,
    horse,
    obstacles,
    pieces,
    numbers: numbersOf(layout),
    letters: markerLetters(obstacles, layout.ride),
    line,
    classClock: classClock(line, layout.ride, course.class),
    truck: truckUse(truck, pieces),
  };
}

/**
 * Everything measurable about a course. The same course object gives the same survey object; obstacles and ways that an
 * edit did not touch are reused. A horse that is not known is replaced by the stock horse.
 */
export const survey = memoizeByIdentity((course: Course): Survey => surveyOf(course));

/**
 * The survey of a course during a drag, from the survey before: every way keeps its side unless another is better by a
 * margin, and the best way is sought only where that is needed. At rest ask for `survey`.
 */
export function dragSurvey(course: Course, before: Survey): Survey {
  return course === before.course ? before : surveyOf(course, before.line);
}

/** The ways in which the legs are ridden best together; worked out on first access, then cached. */
export const bestWaysOf = memoizeByIdentity(({ course, layout, horse, obstacles }: Survey): BestWays => {
  const made = bestWays({ arena: course.arena, horse, layout, obstacles });
  return made;
});
