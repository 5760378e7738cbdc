import type { Arena, Course, Layout } from '../course/course.ts';
import { mapped } from '../course/sharing.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { filled, type Params, type Values } from '../pieces/params.ts';
import { pieceKind } from '../pieces/pieces.ts';

/** Puts the usual value where one is missing; the same values when none is. */
function complete(params: Params, values: Values, tell: (missing: string) => void): Values {
  const missing = Object.keys(params).filter((key) => values[key] === undefined);
  if (missing.length === 0) return values;
  tell(missing.join(', '));
  return filled(params, values);
}

function mendedObstacle(obstacle: Obstacle, tell: (what: string) => void): Obstacle {
  const here = `"${obstacle.id}"`;
  const values = complete(obstacleKind(obstacle.kind)?.params ?? {}, obstacle.values, (missing) =>
    tell(`Obstacle ${here} had no ${missing}; the usual was taken.`),
  );
  const pieces = mapped(obstacle.pieces, (piece) => {
    const whole = complete(pieceKind(piece.kind)?.params ?? {}, piece.values, (missing) =>
      tell(`Piece "${piece.id}" of ${here} had no ${missing}; the usual was taken.`),
    );
    return whole === piece.values ? piece : { ...piece, values: whole };
  });
  return values === obstacle.values && pieces === obstacle.pieces ? obstacle : { ...obstacle, values, pieces };
}

/** The arena with its entrance on its wall: a wall that was shortened may have left it behind. */
function mendedArena(arena: Arena, tell: (what: string) => void): Arena {
  const { length, width, entrance } = arena;
  const wall = entrance.wall === 'north' || entrance.wall === 'south' ? length : width;
  if (entrance.at <= wall) return arena;
  tell(
    `The entrance was ${entrance.at} m along the ${entrance.wall} wall, which is ${wall} m long; it is at its end now.`,
  );
  return { ...arena, entrance: { ...entrance, at: wall } };
}

/** The course with small gaps filled where that loses nothing, and a sentence for each. */
export function mended(course: Course): { readonly course: Course; readonly mends: readonly string[] } {
  const mends: string[] = [];
  const arena = mendedArena(course.arena, (what) => mends.push(what));
  const mendedLayout = (layout: Layout): Layout => {
    const obstacles = mapped(layout.obstacles, (obstacle) => mendedObstacle(obstacle, (what) => mends.push(what)));
    return obstacles === layout.obstacles ? layout : { ...layout, obstacles };
  };
  const [first, ...rest] = course.layouts;
  let { current } = course;
  if (!course.layouts.some((layout) => layout.id === current)) {
    mends.push(`The file shows the layout "${current}", which it does not hold; "${first.id}" is shown.`);
    current = first.id;
  }
  return { course: { ...course, arena, current, layouts: [mendedLayout(first), ...rest.map(mendedLayout)] }, mends };
}
