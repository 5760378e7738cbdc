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
import { labels, messages } from '../../words/desk.ts';
import { infeasibleSentence } from '../commands/commands.ts';
import type { DeskState } from '../desk.ts';
import { nameOf } from '../names.ts';
import type { Plan } from '../plan.ts';
import { shiftBounds } from '../selection/selection.ts';
import { snapContext } from '../snapping/snap-context.ts';
import { snapped } from '../snapping/snapped.ts';
import { inwardShift, roomyShift } from './free-space.ts';
import { usualForBook } from './usual-for-book.ts';
import { placeSentences } from './wall-distances.ts';

/** The snap distance of a newly placed obstacle. */
const SNAP_DISTANCE = FOOT;

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
  if (kind === undefined) return { refusal: messages.noSuchKind(asked.kind) };
  const id = freshId(course, kind.id);
  const built = buildObstacle(id, kind.id, usualForBook(state, kind, asked.values), pose(asked.at.x, asked.at.y));
  if ('why' in built) return { refusal: infeasibleSentence(built, kind.params, course.unit) };
  return placeBuiltPlan(state, built);
}

/** The same for an obstacle that is built already, from where its frame lies. */
export function placeBuiltPlan(state: DeskState, built: Obstacle): Plan {
  const { course } = state;
  const { id } = built;
  const { bounds, pieces } = placedObstacle(built);
  const ground = { ...snapContext(state, []), isRidden: built.passages.length > 0 };
  const moving = { bounds, pieces, shift: { x: 0, y: 0 } };
  const reach = { ground: SNAP_DISTANCE, angle: 0 };
  const drawn = snapped(state, moving, { ground, doing: 'place', reach, isOff: !state.snaps });
  const inward = inwardShift(shiftBounds(bounds, drawn.x, drawn.y), course.arena);
  const wanted = { x: drawn.x + inward.x, y: drawn.y + inward.y };
  const at = (shift: { x: number; y: number }) => ({
    ...built,
    pose: { ...built.pose, x: built.pose.x + shift.x, y: built.pose.y + shift.y },
  });
  const isOccupied = collides(placedObstacle(at(wanted)), state.survey.obstacles);
  const shift = isOccupied ? (roomyShift(bounds, course.arena, state.survey.obstacles) ?? wanted) : wanted;
  const end = at(shift);
  const next = addObstacle(course, end);
  const name = nameOf(survey(next), id);
  const places = placeSentences(next, [id]);
  return {
    course: next,
    chosen: [id],
    label: labels.place(name),
    said: isOccupied ? messages.placedElsewhere(name, places) : messages.placed(name, places),
  };
}
