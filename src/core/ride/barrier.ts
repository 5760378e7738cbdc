/** What keeps a way on the side of an obstacle that the designer has chosen. */
import type { PassedSide } from '../course/course.ts';
import type { PlacedObstacle } from '../course/placed.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import type { Ring } from '../plane/ring.ts';

const TURN: Radians = 2 * Math.PI;

/** A wall without thickness, from the middle of an obstacle outwards: a way that does not cross it has the chosen side. */
export interface Barrier {
  readonly obstacle: PlacedObstacle;
  readonly wall: Ring;
}

/** The middle of an obstacle's bounds: what its sides are told from. */
export function obstacleMiddle({ bounds: { minX, minY, maxX, maxY } }: PlacedObstacle): Point {
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
}

/**
 * The barrier for a way between two points. A way that leaves the obstacle on its left goes round it counter-clockwise,
 * so the wall stands in the middle of the directions that it does not pass. `reach` is longer than the arena.
 */
export function barrier(
  obstacle: PlacedObstacle,
  hand: PassedSide['hand'],
  { from, to, reach }: { readonly from: Point; readonly to: Point; readonly reach: Metres },
): Barrier {
  const middle = obstacleMiddle(obstacle);
  const direction = (at: Point): Radians => Math.atan2(at.y - middle.y, at.x - middle.x);
  const [first, last] = hand === 'left' ? [direction(from), direction(to)] : [direction(to), direction(from)];
  const passed = last - first - TURN * Math.floor((last - first) / TURN);
  const angle = last + (TURN - passed) / 2;
  const end = { x: middle.x + reach * Math.cos(angle), y: middle.y + reach * Math.sin(angle) };
  return { obstacle, wall: [middle, end] };
}
