import type { Course } from '../../core/course/course.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { TOUCH } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import { stopOf } from '../constraints/blocking-constraint.ts';
import { pieceSettled } from '../constraints/constrained-move.ts';
import type { DeskState, Guide, Touch } from '../desk.ts';
import { labels, words } from '../desk-words.ts';
import { nameOf } from '../names.ts';
import { placesIn } from '../placing/wall-distances.ts';
import { boundsOfPieces, movedBounds } from '../selection/selection.ts';
import { snap } from '../snapping/snap.ts';
import { PLACE_SOURCES } from '../snapping/snap-sources.ts';
import type { Gesture } from './gesture.ts';
import { groundFor } from './move.ts';

/** Drags one piece inside its obstacle: what is held goes on holding, and a fixed piece stays and says so. */
export function pieceGesture(down: Touch, state: DeskState, piece: PlacedPiece): Gesture {
  const { course, survey } = state;
  const chosen = [piece.key];
  const name = nameOf(survey, piece.key);
  const bounds = boundsOfPieces([piece]);
  const ground = groundFor(survey, [piece.obstacle]);

  const stuckAt = (there: Course, wish: Pose, why: string): readonly Guide[] => {
    const stops = stopOf(there, new Map([[piece.key, wish]]));
    return stops.length === 0 ? [{ says: why, marks: [] }] : stops;
  };
  const showing = (preview: Course | null, guides: readonly Guide[], stuck?: string): Gesture => ({
    course: preview,
    chosen,
    guides,
    doing: words.moving(name),
    ...(stuck === undefined ? {} : { said: stuck }),
    moved: (touch) => {
      if (piece.piece.fixed) return showing(null, [], words.pieceIsFixed(name));
      const asked = { x: touch.at.x - down.at.x, y: touch.at.y - down.at.y };
      if (bounds === null) return showing(null, []);
      const drawn = snap({ bounds: movedBounds(bounds, asked.x, asked.y), pieces: [piece], carried: asked }, ground, {
        sources: touch.loose ? [] : PLACE_SOURCES,
        reach: { ground: touch.reach, angle: 0 },
      });
      const [dx, dy] = [asked.x + drawn.x, asked.y + drawn.y];
      // Back at its place is the course itself, not a copy of it.
      if (Math.hypot(dx, dy) < TOUCH) return showing(null, drawn.guides);
      const wish = { ...piece.pose, x: piece.pose.x + dx, y: piece.pose.y + dy };
      const outcome = pieceSettled(course, piece.key, { pose: wish, name });
      // Where it cannot go, it stays at the last place where it could.
      return outcome.kind === 'stuck'
        ? showing(preview, stuckAt(preview ?? course, wish, outcome.why), outcome.why)
        : showing(outcome.course, outcome.exact ? drawn.guides : stopOf(outcome.course, new Map([[piece.key, wish]])));
    },
    done: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen,
      label: labels.move(name),
      said: stuck ?? words.moved(name, placesIn(preview ?? course, chosen)),
    }),
  });
  return showing(null, []);
}
