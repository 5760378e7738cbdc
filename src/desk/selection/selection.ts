import type { Course } from '../../core/course/course.ts';
import { currentLayout } from '../../core/course/course.ts';
import { crossingsOf } from '../../core/course/edit-crossings.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import type { PlacedObstacle, PlacedPiece } from '../../core/course/placed.ts';
import { type Bounds, ringBounds } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';

/*
 * Keys name what can be chosen: `fan-1` an obstacle, `fan-1/pole-2` one of its pieces, `bend:leg-3:0` a bend of the
 * line, `ride:start` where the go begins, `ride:end` where it ends, `cross:leg-3:0` where the line crosses a pole, and `cross:leg-3:all` all of those.
 */

export type Keys = readonly string[];
export const RIDE_START = 'ride:start';
export const RIDE_END = 'ride:end';

/** One bend of one leg's approach. */
export interface BendKey {
  readonly leg: string;
  readonly index: number;
}

export function bendKey(leg: string, index: number): string {
  return `bend:${leg}:${index}`;
}

/** The bend that a key names; null for every other key. */
export function bendIn(key: string): BendKey | null {
  const [word, leg, index] = key.split(':');
  return word === 'bend' && leg !== undefined && index !== undefined ? { leg, index: Number(index) } : null;
}

/** One crossing of one leg, by its place in the passage, or all of them. */
export interface CrossKey {
  readonly leg: string;
  readonly index: number | 'all';
}

export function crossKey(leg: string, index: number | 'all'): string {
  return `cross:${leg}:${index}`;
}

/** The crossings that a key names; null for every other key. */
export function crossIn(key: string): CrossKey | null {
  const [word, leg, index] = key.split(':');
  if (word !== 'cross' || leg === undefined || index === undefined) return null;
  return { leg, index: index === 'all' ? 'all' : Number(index) };
}

function exists(course: Course, key: string): boolean {
  const layout = currentLayout(course);
  if (key === RIDE_START) return true;
  if (key === RIDE_END) return layout.ride.end !== undefined || layout.ride.legs.length > 0;
  const cross = crossIn(key);
  if (cross !== null) {
    const count = crossingsOf(layout, cross.leg).length;
    return cross.index === 'all' ? count > 0 : cross.index < count;
  }
  const bend = bendIn(key);
  if (bend !== null) {
    return (layout.ride.legs.find((leg) => leg.id === bend.leg)?.bends.length ?? 0) > bend.index;
  }
  const obstacle = layout.obstacles.find((each) => each.id === obstacleOf(key));
  if (obstacle === undefined) return false;
  const piece = pieceOf(key);
  return piece === undefined || obstacle.pieces.some((each) => each.id === piece);
}

/** The keys that still name something; the same array when all do. */
export function existingKeys(keys: Keys, course: Course): Keys {
  return keys.every((key) => exists(course, key)) ? keys : keys.filter((key) => exists(course, key));
}

/** The keys with one put in or taken out. */
export function toggleKey(keys: Keys, key: string): Keys {
  return keys.includes(key) ? keys.filter((each) => each !== key) : [...keys, key];
}

/** Ids of the obstacles in the order of the go, those that are not ridden at the end. */
export function goOrder(course: Course): Keys {
  const layout = currentLayout(course);
  const there = new Set(layout.obstacles.map((each) => each.id));
  const ridden = layout.ride.legs.map((leg) => leg.obstacle).filter((id) => there.has(id));
  return [...new Set([...ridden, ...there])];
}

/** The obstacles that are chosen as a whole. */
export function chosenObstacles(survey: Survey, chosen: Keys): readonly PlacedObstacle[] {
  return survey.obstacles.filter((each) => chosen.includes(each.obstacle.id));
}

/** Every piece that is chosen, by itself or with its obstacle. */
export function chosenPieces(survey: Survey, chosen: Keys): readonly PlacedPiece[] {
  return survey.pieces.filter((each) => chosen.includes(each.key) || chosen.includes(each.obstacle));
}

/** The box that holds the footprints; null for none. */
export function boundsOfPieces(pieces: readonly PlacedPiece[]): Bounds | null {
  const points = pieces.flatMap((piece) => piece.footprint);
  return points.length === 0 ? null : ringBounds(points);
}

export function shiftBounds(bounds: Bounds, dx: number, dy: number): Bounds {
  return { minX: bounds.minX + dx, minY: bounds.minY + dy, maxX: bounds.maxX + dx, maxY: bounds.maxY + dy };
}
