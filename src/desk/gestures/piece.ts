import type { Course } from '../../core/course/course.ts';
import type { PlacedPiece } from '../../core/course/placed.ts';
import { TOUCH } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import { labels, messages } from '../../words/desk.ts';
import { handWords } from '../../words/hand.ts';
import { blockingGuides } from '../constraints/blocking-constraint.ts';
import { movePiece } from '../constraints/constrained-move.ts';
import { alongWords, movePieceAlone, piecesMoved } from '../constraints/piece-alone.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { nameOf } from '../names.ts';
import { placeSentences } from '../placing/wall-distances.ts';
import { boundsOfPieces, shiftBounds } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';
import { snapContext } from '../snapping/snap-context.ts';
import { MOST_SNAP, snapped } from '../snapping/snapped.ts';
import type { Gesture } from './gesture.ts';

interface Shown {
  readonly stuck?: string;
  readonly stops?: readonly Guide[];
  readonly asked?: Pose;
  readonly gaveWay?: readonly string[];
}

/** Drags one piece inside its obstacle: constraints stay met, and a fixed piece stays and says so. */
export function pieceGesture(down: PointerInput, state: DeskState, piece: PlacedPiece): Gesture {
  const { course, survey } = state;
  const chosen = [piece.key];
  const name = nameOf(survey, piece.key);
  const bounds = boundsOfPieces([piece]);
  const ground = snapContext(state, [piece.obstacle]);

  const stuckAt = (there: Course, target: Pose, why: string): readonly Guide[] => {
    const stops = blockingGuides(there, new Map([[piece.key, target]]));
    return stops.length === 0 ? [{ says: why, marks: [] }] : stops;
  };
  const alongOf = (preview: Course | null): Pick<Gesture, 'along'> => {
    const others = preview === null ? new Set<string>() : new Set(piecesMoved(course, preview));
    others.delete(piece.key);
    const along = alongWords(course, piece.key, others);
    return along === null ? {} : { along };
  };
  const showing = (
    preview: Course | null,
    guides: readonly Guide[],
    { stuck, stops = [], asked, gaveWay = [] }: Shown = {},
  ): Gesture => ({
    course: preview,
    chosen,
    guides,
    doing: messages.moving(name),
    ...(stuck === undefined ? {} : { said: stuck }),
    ...(asked === undefined ? {} : { piece: { key: piece.key, pose: asked } }),
    ...alongOf(preview),
    moved: (input) => {
      if (piece.piece.fixed) return showing(null, [], { stuck: messages.pieceIsPinned(name) });
      const asked = { x: input.at.x - down.at.x, y: input.at.y - down.at.y };
      if (bounds === null) return showing(null, []);
      const moving = { bounds: shiftBounds(bounds, asked.x, asked.y), pieces: [piece], shift: asked };
      const reach = { ground: Math.min(input.pickRadius, MOST_SNAP), angle: 0 };
      const drawn = snapped(state, moving, { ground, doing: 'place', reach, isOff: input.isSnapOff });
      const [dx, dy] = [asked.x + drawn.x, asked.y + drawn.y];
      // Back at its start it is the same course object, not a copy.
      if (Math.hypot(dx, dy) < TOUCH) return showing(null, drawn.guides);
      const target = { ...piece.pose, x: piece.pose.x + dx, y: piece.pose.y + dy };
      if (input.isAlone) {
        const { course: alone, gaveWay = [] } = movePieceAlone(course, piece.key, target);
        return showing(alone, drawn.guides, { asked: target, gaveWay });
      }
      const outcome = movePiece(course, piece.key, { pose: target, name });
      // Where it cannot go, it stays at the last place where it could.
      if (outcome.kind === 'stuck') {
        return showing(preview, stuckAt(preview ?? course, target, outcome.why), {
          stuck: outcome.why,
          asked: target,
        });
      }
      if (outcome.exact) return showing(outcome.course, drawn.guides, { asked: target });
      const stops = blockingGuides(outcome.course, new Map([[piece.key, target]]));
      return showing(outcome.course, stops, { stops, asked: target });
    },
    commit: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen,
      label: labels.move(name),
      said:
        stuck ??
        messages.stoppedShort(
          handWords.movedAlone(messages.moved(name, placeSentences(preview ?? course, chosen, course)), gaveWay),
          stops.map(({ says }) => says),
        ),
    }),
  });
  return showing(null, []);
}
