import type { Course, Layout, Stock } from './course/course.ts';
import type { PlacedObstacle, PlacedPiece } from './course/placed.ts';
import type { Horse } from './horses/horse.ts';
import type { Line } from './ride/line.ts';

/** How many of one line of the truck list the layout uses. `stock` is null for pieces that no line offers. */
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
  readonly line: Line;
  readonly truck: readonly TruckUse[];
}
