import type { Wall } from '../../core/constraints/constraint.ts';
import { type Arena, type Course, currentLayout } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres } from '../../core/measure/quantity.ts';
import { type Point, point } from '../../core/plane/point.ts';
import type { Bounds } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';
import { messages } from '../desk-words.ts';
import { boundsOfPieces, chosenPieces, type Keys } from '../selection/selection.ts';

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

/** Where the things that the keys name lie, as sentences. */
export function nearWallSentencesOf(course: Course, keys: Keys): readonly string[] {
  const pieces = currentLayout(course)
    .obstacles.filter((each) => keys.some((key) => obstacleOf(key) === each.id))
    .flatMap((each) => placedObstacle(each).pieces)
    .filter((piece) => keys.includes(piece.key) || keys.includes(piece.obstacle));
  const bounds = boundsOfPieces(pieces);
  return bounds === null ? [] : nearWallSentences(bounds, course.arena, course.unit);
}

/** `12' 3" from the west wall`, `8' 0" from the south wall`: the nearer wall of each pair. */
export function nearWallSentences(bounds: Bounds, arena: Arena, unit: LengthUnit): readonly string[] {
  return wallDistances(bounds, arena, unit)
    .filter((each) => each.near)
    .map((each) => messages.fromWall(each.length, each.wall, unit));
}
