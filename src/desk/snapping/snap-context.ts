import type { DeskState } from '../desk.ts';
import { nameOf } from '../names.ts';
import type { Keys } from '../selection/selection.ts';
import type { SnapContext } from './snap.ts';

/** What the moving things may snap to: everything but the keys, which are obstacles. */
export function snapContext({ survey, bandAsked }: Pick<DeskState, 'survey' | 'bandAsked'>, keys: Keys): SnapContext {
  const { course } = survey;
  return {
    arena: course.arena,
    unit: course.unit,
    others: survey.obstacles.filter((each) => !keys.includes(each.obstacle.id)),
    name: (key) => nameOf(survey, key),
    isRidden: survey.obstacles.some(({ obstacle }) => keys.includes(obstacle.id) && obstacle.passages.length > 0),
    clear: bandAsked('wall.clear')?.least ?? null,
  };
}
