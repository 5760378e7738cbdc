import { type Draft, produce } from 'immer';
import type { Arena, Course } from '../course/course.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { completeValues, type Params, type Values } from '../pieces/params.ts';
import { pieceKind } from '../pieces/pieces.ts';

/** Puts the usual value where one is missing that files always had; the same values when none is. */
function complete(params: Params, values: Values, tell: (missing: string) => void): Values {
  const missing = Object.keys(params).filter((key) => values[key] === undefined && params[key]?.later === undefined);
  if (missing.length === 0) return values;
  tell(missing.join(', '));
  return completeValues(params, values);
}

function mendObstacle(obstacle: Draft<Obstacle>, tell: (what: string) => void): void {
  const here = `"${obstacle.id}"`;
  obstacle.values = complete(obstacleKind(obstacle.kind)?.params ?? {}, obstacle.values, (missing) =>
    tell(`Obstacle ${here} had no ${missing}; the usual was taken.`),
  );
  for (const piece of obstacle.pieces) {
    piece.values = complete(pieceKind(piece.kind)?.params ?? {}, piece.values, (missing) =>
      tell(`Piece "${piece.id}" of ${here} had no ${missing}; the usual was taken.`),
    );
  }
}

/** Puts the entrance on its wall: a wall that was shortened may have left it behind. */
function mendArena({ length, width, entrance }: Draft<Arena>, tell: (what: string) => void): void {
  const wall = entrance.wall === 'north' || entrance.wall === 'south' ? length : width;
  if (entrance.at <= wall) return;
  tell(
    `The entrance was ${entrance.at} m along the ${entrance.wall} wall, which is ${wall} m long; it is at its end now.`,
  );
  entrance.at = wall;
}

/**
 * The course with small gaps filled where that loses nothing, and a sentence for each. It is frozen, so that the first
 * edit does not have to do it under a moving hand.
 */
export function mended(course: Course): { readonly course: Course; readonly mends: readonly string[] } {
  const mends: string[] = [];
  const tell = (what: string) => mends.push(what);
  const whole = produce(course, (draft) => {
    mendArena(draft.arena, tell);
    const [first] = draft.layouts;
    if (!draft.layouts.some((layout) => layout.id === draft.current)) {
      tell(`The file shows the layout "${draft.current}", which it does not hold; "${first.id}" is shown.`);
      draft.current = first.id;
    }
    for (const { obstacles } of draft.layouts) for (const obstacle of obstacles) mendObstacle(obstacle, tell);
  });
  return { course: whole, mends };
}
