import type { Wall } from '../../core/constraints/constraint.ts';
import { type Arena, type Course, currentLayout } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres } from '../../core/measure/quantity.ts';
import { type Point, point } from '../../core/plane/point.ts';
import type { Bounds } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import { bendIn, boundsOfPieces, chosenPieces, type Keys, RIDE_END, RIDE_START } from '../selection/selection.ts';

/** A tape from what is chosen to a wall, square to it. Negative when the thing is outside. */
export interface WallDistance {
  readonly wall: Wall;
  readonly length: Metres;
  readonly text: string;
  /** On the wall, and on the nearest side of what is chosen. */
  readonly from: Point;
  readonly to: Point;
  /** The nearer wall of its two. */
  readonly near: boolean;
}

function wallDistance(wall: Wall, bounds: Bounds, arena: Arena): { from: Point; to: Point; length: Metres } {
  const [x, y] = [(bounds.minX + bounds.maxX) / 2, (bounds.minY + bounds.maxY) / 2];
  switch (wall) {
    case 'west':
      return { from: point(0, y), to: point(bounds.minX, y), length: bounds.minX };
    case 'east':
      return { from: point(arena.length, y), to: point(bounds.maxX, y), length: arena.length - bounds.maxX };
    case 'south':
      return { from: point(x, 0), to: point(x, bounds.minY), length: bounds.minY };
    case 'north':
      return { from: point(x, arena.width), to: point(x, bounds.maxY), length: arena.width - bounds.maxY };
  }
}

export function wallDistances(bounds: Bounds, arena: Arena, unit: LengthUnit): readonly WallDistance[] {
  return (
    [
      ['west', 'east'],
      ['south', 'north'],
    ] as const
  ).flatMap((pair) => {
    const [low, high] = pair.map((wall) => ({ wall, ...wallDistance(wall, bounds, arena) }));
    if (low === undefined || high === undefined) return [];
    return [low, high].map((each) => ({
      ...each,
      text: printLength(each.length, unit),
      near: each === (low.length <= high.length ? low : high),
    }));
  });
}

/** The taped distances of what is chosen to the four walls; empty when nothing is chosen. */
export function chosenWallDistances(state: {
  readonly survey: Survey;
  readonly chosen: Keys;
}): readonly WallDistance[] {
  const { arena, unit } = state.survey.course;
  const bounds = boundsOfPieces(chosenPieces(state.survey, state.chosen));
  return bounds === null ? [] : wallDistances(bounds, arena, unit);
}

/** Where what the keys name lies: one thing by its own place, as it is typed; several by the corner of their box. Null for none. */
function placeOf(course: Course, keys: Keys): Point | null {
  const [key, more] = keys;
  if (key === undefined) return null;
  const { obstacles, ride } = currentLayout(course);
  const own = more === undefined ? obstacles.find(({ id }) => id === key) : undefined;
  if (own !== undefined) return own.pose;
  const pieces = obstacles
    .filter((each) => keys.some((named) => obstacleOf(named) === each.id))
    .flatMap((each) => placedObstacle(each).pieces)
    .filter((piece) => keys.includes(piece.key) || keys.includes(piece.obstacle));
  if (more === undefined) {
    const bend = bendIn(key);
    if (bend !== null) return ride.legs.find(({ id }) => id === bend.leg)?.bends[bend.index] ?? null;
    if (key === RIDE_END) return ride.end ?? null;
    return key === RIDE_START ? ride.start : (pieces[0]?.pose ?? null);
  }
  const bounds = boundsOfPieces(pieces);
  return bounds === null ? null : point(bounds.minX, bounds.minY);
}

/**
 * `12' 3" from the west wall`, `8' from the south wall`: distances are counted from the same corner everywhere. Where a
 * course before is given, what has changed says what it was.
 */
export function placeSentences(course: Course, keys: Keys, before: Course = course): readonly string[] {
  const [at, was] = [placeOf(course, keys), placeOf(before, keys)];
  if (at === null) return [];
  return (['x', 'y'] as const).map((axis) => {
    const wall = axis === 'x' ? 'west' : 'south';
    const old = was === null || course.unit !== before.unit ? '' : printLength(was[axis], course.unit);
    const says = messages.fromWall(at[axis], wall, course.unit);
    return old === '' || old === printLength(at[axis], course.unit) ? says : messages.withWas(says, old);
  });
}
