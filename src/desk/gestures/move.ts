import { bandOf, limitsOf } from '../../core/checks/rulebooks/rulebooks.ts';
import type { Course } from '../../core/course/course.ts';
import { shiftByKeys } from '../../core/course/edit-obstacles.ts';
import type { Survey } from '../../core/survey.ts';
import { stopOfObstacles } from '../constraints/blocking-constraint.ts';
import { obstaclesSettled } from '../constraints/constrained-move.ts';
import type { DeskState, Guide, Touch } from '../desk.ts';
import { labels, words } from '../desk-words.ts';
import { nameOf, namesOf } from '../names.ts';
import { placesIn } from '../placing/wall-distances.ts';
import { boundsOfPieces, chosenPieces, type Keys, movedBounds } from '../selection/selection.ts';
import { type Ground, snap } from '../snapping/snap.ts';
import { PLACE_SOURCES } from '../snapping/snap-sources.ts';
import type { Gesture } from './gesture.ts';

/** What the ground offers to snap to, for everything but the keys. */
export function groundFor(survey: Survey, keys: Keys): Ground {
  const { course } = survey;
  const limit = limitsOf(course)['wall.clear'];
  return {
    arena: course.arena,
    unit: course.unit,
    others: survey.obstacles.filter((each) => !keys.includes(each.obstacle.id)),
    name: (obstacle) => nameOf(survey, obstacle),
    clear: (limit === undefined ? undefined : bandOf(limit).least) ?? null,
  };
}

/** Drags whole obstacles over the ground. */
export function moveGesture(down: Touch, state: DeskState, keys: Keys): Gesture {
  const { course, survey } = state;
  const pieces = chosenPieces(survey, keys);
  const bounds = boundsOfPieces(pieces);
  const ground = groundFor(survey, keys);
  const name = namesOf(survey, keys);

  const showing = (preview: Course | null, guides: readonly Guide[], stuck?: string): Gesture => ({
    course: preview,
    chosen: keys,
    guides,
    doing: words.moving(name),
    ...(stuck === undefined ? {} : { said: stuck }),
    moved: (touch) => {
      const asked = { x: touch.at.x - down.at.x, y: touch.at.y - down.at.y };
      if (bounds === null) return showing(null, []);
      const moving = { bounds: movedBounds(bounds, asked.x, asked.y), pieces, carried: asked };
      const options = { sources: touch.loose ? [] : PLACE_SOURCES, reach: { ground: touch.reach, angle: 0 } };
      const drawn = snap(moving, ground, options);
      const moved = shiftByKeys(course, keys, asked.x + drawn.x, asked.y + drawn.y);
      const outcome = obstaclesSettled(course, moved, { ids: keys, name });
      // Where they cannot go, they stay at the last place where they could.
      return outcome.kind === 'stuck'
        ? showing(preview, [{ says: outcome.why, marks: [] }], outcome.why)
        : showing(outcome.course, outcome.exact ? drawn.guides : stopOfObstacles(outcome.course, moved, keys));
    },
    done: () => ({
      ...(preview === null ? {} : { course: preview }),
      chosen: keys,
      label: labels.move(name),
      said: stuck ?? words.moved(name, placesIn(preview ?? course, keys)),
    }),
  });
  return showing(null, []);
}
