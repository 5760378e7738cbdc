import type { Course } from '../../core/course/course.ts';
import { rotateByKeys } from '../../core/course/edit-obstacles.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import type { Point } from '../../core/plane/point.ts';
import { normalizeAngle } from '../../core/plane/pose.ts';
import { labels, messages } from '../../words/desk.ts';
import { type MoveOutcome, moveObstacles, movePiece } from '../constraints/constrained-move.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { namesOf } from '../names.ts';
import { boundsOfPieces, chosenObstacles, chosenPieces, type Keys } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';
import { snapContext } from '../snapping/snap-context.ts';
import { snapped } from '../snapping/snapped.ts';
import type { Gesture } from './gesture.ts';

/** A turn never snaps from farther than this, however near the pointer is to the centre: 4°. */
const WIDEST = Math.PI / 45;

function bearing(from: Point, to: Point): number {
  return Math.atan2(to.y - from.y, to.x - from.x);
}

/** The heading that a single chosen thing has; null for several. */
export function headingOf(state: Pick<DeskState, 'survey' | 'chosen'>): number | null {
  const [key, more] = state.chosen;
  if (key === undefined || more !== undefined) return null;
  const piece = state.survey.pieces.find((each) => each.key === key);
  return piece?.pose.angle ?? chosenObstacles(state.survey, state.chosen)[0]?.obstacle.pose.angle ?? null;
}

/** Turns what is chosen about a point by the handle. */
export function turnGesture(down: PointerInput, state: DeskState, about: Point): Gesture {
  const { survey, chosen } = state;
  const pieces = chosenPieces(survey, chosen);
  const bounds = boundsOfPieces(pieces);
  const owners: Keys = chosen.map(obstacleOf);
  const ground = snapContext(state, owners);
  const name = namesOf(survey, chosen);
  const start = headingOf(state);
  const grasp = bearing(about, down.at);

  const showing = (preview: Course | null, guides: readonly Guide[], by: number, stuck?: string): Gesture => ({
    course: preview,
    chosen,
    guides,
    doing: messages.turning(name, by),
    ...(stuck === undefined ? {} : { said: stuck }),
    moved: (input) => {
      const asked = normalizeAngle(bearing(about, input.at) - grasp);
      if (bounds === null) return showing(null, [], 0);
      // Several things have no one heading: then the turn itself goes by whole steps.
      const base = start ?? 0;
      const arm = Math.hypot(input.at.x - about.x, input.at.y - about.y);
      const angle = arm === 0 ? 0 : Math.min(WIDEST, input.pickRadius / arm);
      const moving = { bounds, pieces, shift: { x: 0, y: 0 }, angle: base + asked };
      const doing = start === null ? 'turn-together' : 'turn';
      const drawn = snapped(state, moving, { ground, doing, reach: { ground: 0, angle }, isOff: input.isSnapOff });
      const by = normalizeAngle(asked + drawn.angle);
      const next = turnChoice(state, by, about);
      return next.kind === 'stuck'
        ? showing(preview, [], by, next.why)
        : showing(next.course, next.exact ? drawn.guides : [], by);
    },
    commit: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen,
      label: labels.turn(name),
      said: stuck ?? messages.turned(name, start === null ? null : normalizeAngle(start + by), start),
    }),
  });
  return showing(null, [], 0);
}

/** The course with the selection turned about a point; for a single piece its constraints stay met. */
export function turnChoice(
  state: Pick<DeskState, 'course' | 'survey' | 'chosen'>,
  by: number,
  about: Point,
): MoveOutcome {
  const { course, survey, chosen } = state;
  const [key] = chosen;
  const piece = survey.pieces.find((each) => each.key === key);
  if (key === undefined || pieceOf(key) === undefined || piece === undefined) {
    const name = namesOf(survey, chosen);
    return moveObstacles(course, rotateByKeys(course, chosen, by, about), { ids: chosen, name });
  }
  const name = namesOf(survey, chosen);
  if (piece.piece.fixed) return { kind: 'stuck', why: messages.pieceIsPinned(name) };
  const pose = { ...piece.pose, angle: normalizeAngle(piece.pose.angle + by) };
  return movePiece(course, key, { pose, name });
}
