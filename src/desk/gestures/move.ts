import type { Course } from '../../core/course/course.ts';
import { shiftByKeys } from '../../core/course/edit-obstacles.ts';
import { labels, messages } from '../../words/desk.ts';
import { obstacleBlockingGuides } from '../constraints/blocking-constraint.ts';
import { moveObstacles } from '../constraints/constrained-move.ts';
import type { DeskState } from '../desk.ts';
import type { PointerInput } from '../input.ts';
import { namesOf } from '../names.ts';
import { placeSentences } from '../placing/wall-distances.ts';
import { boundsOfPieces, chosenPieces, type Keys, shiftBounds } from '../selection/selection.ts';
import type { Guide } from '../snapping/guide.ts';
import { snapContext } from '../snapping/snap-context.ts';
import { MOST_SNAP, snapped } from '../snapping/snapped.ts';
import type { Gesture } from './gesture.ts';

/** Drags whole obstacles over the ground. */
export function moveGesture(down: PointerInput, state: DeskState, keys: Keys): Gesture {
  const { course, survey } = state;
  const pieces = chosenPieces(survey, keys);
  const bounds = boundsOfPieces(pieces);
  const ground = snapContext(state, keys);
  const name = namesOf(survey, keys);

  const showing = (
    preview: Course | null,
    guides: readonly Guide[],
    { stuck, stops = [] }: { readonly stuck?: string; readonly stops?: readonly Guide[] } = {},
  ): Gesture => ({
    course: preview,
    chosen: keys,
    guides,
    doing: messages.moving(name),
    ...(stuck === undefined ? {} : { said: stuck }),
    moved: (input) => {
      const asked = { x: input.at.x - down.at.x, y: input.at.y - down.at.y };
      if (bounds === null) return showing(null, []);
      const moving = { bounds: shiftBounds(bounds, asked.x, asked.y), pieces, shift: asked };
      const reach = { ground: Math.min(input.pickRadius, MOST_SNAP), angle: 0 };
      const drawn = snapped(state, moving, { ground, doing: 'place', reach, isOff: input.isSnapOff });
      const moved = shiftByKeys(course, keys, asked.x + drawn.x, asked.y + drawn.y);
      const outcome = moveObstacles(course, moved, { ids: keys, name });
      // Where they cannot go, they stay at the last place where they could.
      if (outcome.kind === 'stuck') return showing(preview, [{ says: outcome.why, marks: [] }], { stuck: outcome.why });
      if (outcome.exact) return showing(outcome.course, drawn.guides);
      const stops = obstacleBlockingGuides(outcome.course, moved, keys);
      return showing(outcome.course, stops, { stops });
    },
    commit: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen: keys,
      label: labels.move(name),
      said:
        stuck ??
        messages.stoppedShort(
          messages.moved(name, placeSentences(preview ?? course, keys, course)),
          stops.map(({ says }) => says),
        ),
    }),
  });
  return showing(null, []);
}
