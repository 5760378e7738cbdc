import { addObstacle, freshId } from '../../core/course/edit-obstacles.ts';
import { type PlacedObstacle, placedObstacle } from '../../core/course/placed.ts';
import { FOOT } from '../../core/measure/quantity.ts';
import { buildObstacle } from '../../core/obstacles/build.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { obstacleKind } from '../../core/obstacles/obstacles.ts';
import type { Values } from '../../core/pieces/params.ts';
import type { Point } from '../../core/plane/point.ts';
import { pose } from '../../core/plane/pose.ts';
import { boundsIntersect } from '../../core/plane/ring.ts';
import { ringDistance } from '../../core/plane/segment.ts';
import { survey } from '../../core/survey.ts';
import { type Plan, refusalOf } from '../commands/commands.ts';
import type { DeskState } from '../desk.ts';
import { labels, words } from '../desk-words.ts';
import { groundFor } from '../gestures/move.ts';
import { nameOf } from '../names.ts';
import { movedBounds } from '../selection/selection.ts';
import { snap } from '../snapping/snap.ts';
import { PLACE_SOURCES } from '../snapping/snap-sources.ts';
import { freeShift, keptInside } from './free-space.ts';
import { placesOf } from './wall-distances.ts';

/** How near a newly placed obstacle is drawn to a wall or a line. */
const DRAWN = FOOT;

function collides(there: PlacedObstacle, others: readonly PlacedObstacle[]): boolean {
  return others.some(
    (other) =>
      boundsIntersect(there.bounds, other.bounds) &&
      there.pieces.some((mine) => other.pieces.some((its) => ringDistance(mine.footprint, its.footprint) === 0)),
  );
}

/** An obstacle built and put where it was asked for: snapped, inside the arena, and not on top of another. */
export function placePlan(
  state: DeskState,
  asked: { readonly kind: string; readonly values: Values; readonly at: Point },
): Plan {
  const { course } = state;
  const kind = obstacleKind(asked.kind);
  if (kind === undefined) return { refused: words.noSuchKind(asked.kind) };
  const id = freshId(course, kind.id);
  const built = buildObstacle(id, kind.id, asked.values, pose(asked.at.x, asked.at.y));
  if ('why' in built) return { refused: refusalOf(built, kind.params, course.unit) };
  return builtPlan(state, built);
}

/** The same for an obstacle that is built already, from where its frame lies. */
export function builtPlan(state: DeskState, built: Obstacle): Plan {
  const { course } = state;
  const { id } = built;
  const { bounds, pieces } = placedObstacle(built);
  const drawn = snap({ bounds, pieces, carried: { x: 0, y: 0 } }, groundFor(state.survey, []), {
    sources: PLACE_SOURCES,
    reach: { ground: DRAWN, angle: 0 },
  });
  const kept = keptInside(movedBounds(bounds, drawn.x, drawn.y), course.arena);
  const wanted = { x: drawn.x + kept.x, y: drawn.y + kept.y };
  const at = (shift: { x: number; y: number }) => ({
    ...built,
    pose: { ...built.pose, x: built.pose.x + shift.x, y: built.pose.y + shift.y },
  });
  const taken = collides(placedObstacle(at(wanted)), state.survey.obstacles);
  const shift = taken ? (freeShift(bounds, course.arena, state.survey.obstacles) ?? wanted) : wanted;
  const end = at(shift);
  const next = addObstacle(course, end);
  const name = nameOf(survey(next), id);
  const places = placesOf(placedObstacle(end).bounds, course.arena, course.unit);
  return {
    course: next,
    chosen: [id],
    label: labels.place(name),
    said: taken ? words.placedElsewhere(name, places) : words.placed(name, places),
  };
}
