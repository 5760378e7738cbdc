import { currentLayout } from '../core/course/course.ts';
import { printAngle } from '../core/measure/angle.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized } from '../core/text/sentence.ts';
import { nameOf, namesOf } from './names.ts';
import { nearWallSentences } from './placing/wall-distances.ts';
import { boundsOfPieces, chosenObstacles, chosenPieces, type Keys } from './selection/selection.ts';

/** The desk in words for a screen reader: what is chosen and where it lies, or what the arena holds. */
export function description(state: { readonly survey: Survey; readonly chosen: Keys }): string {
  const { survey, chosen } = state;
  const { arena, unit } = survey.course;
  const [key, more] = chosen;
  if (key === undefined) return overview(survey);
  const bounds = boundsOfPieces(chosenPieces(survey, chosen));
  const places = bounds === null ? [] : nearWallSentences(bounds, arena, unit);
  if (more !== undefined) return fullSentence([`${namesOf(survey, chosen)} chosen`, ...places]);

  const piece = survey.pieces.find((each) => each.key === key);
  if (piece !== undefined) {
    const fixed = piece.piece.fixed ? ['fixed'] : [];
    return fullSentence([nameOf(survey, key), ...fixed, ...places, `at ${printAngle(piece.pose.angle)}`]);
  }
  const [obstacle] = chosenObstacles(survey, chosen);
  if (obstacle === undefined) return fullSentence([nameOf(survey, key)]);
  const order = survey.numbers.has(key) ? [] : ['not in the go'];
  const gaits = [...new Set(survey.layout.ride.legs.filter((leg) => leg.obstacle === key).map((leg) => leg.gait))];
  const count = obstacle.pieces.length;
  return fullSentence([
    nameOf(survey, key),
    ...order,
    ...gaits,
    `${count} ${count === 1 ? 'piece' : 'pieces'}`,
    ...places,
    `at ${printAngle(obstacle.obstacle.pose.angle)}`,
  ]);
}

function overview(survey: Survey): string {
  const { obstacles, ride } = currentLayout(survey.course);
  const things = obstacles.length === 1 ? '1 obstacle' : `${obstacles.length} obstacles`;
  const legs = ride.legs.length === 1 ? '1 leg' : `${ride.legs.length} legs`;
  return fullSentence(['Nothing is chosen', things, `a go of ${legs}`]);
}

function fullSentence(parts: readonly string[]): string {
  return `${capitalized(parts.join(', '))}.`;
}
