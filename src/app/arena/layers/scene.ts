import type { Survey } from '../../../core/survey.ts';
import type { DeskState } from '../../../desk/desk.ts';
import type { ComparedState } from '../../change/compared.ts';
import type { ShownPlan } from '../../change/shown-plan.tsx';
import type { ViewState } from '../../view.ts';
import type { Theme } from '../painters/inks.ts';

/** All that the arena is painted from, as it is in one frame. */
export interface Scene {
  readonly desk: DeskState;
  /** The survey before the gesture, and what the gesture has moved since, by obstacle id. At rest: the desk's, and nothing. */
  readonly resting: Survey;
  readonly moved: ReadonlySet<string>;
  readonly view: ViewState;
  readonly compared: ComparedState;
  readonly plan: ShownPlan | null;
  readonly theme: Theme;
  /** How far from a thing a pointer still is on it, pixels. */
  readonly reach: number;
  /** Whether hoof prints are wanted, and the time of the horse that rides, seconds. */
  readonly hasPrints: boolean;
  readonly time: number;
}

/** What a gesture has moved, by obstacle id. */
export interface Moved {
  readonly resting: Survey;
  readonly moved: ReadonlySet<string>;
}

const NOTHING: ReadonlySet<string> = new Set();

/**
 * What a gesture has moved so far: obstacles that are no longer the objects they were at rest. What has once moved stays
 * among them until the end, and the set is the same object while nothing joins it, so that all else is painted once.
 */
export function movedBy({ gesture, survey }: Pick<DeskState, 'gesture' | 'survey'>, before: Moved | null): Moved {
  if (gesture === null || before === null) return { resting: survey, moved: NOTHING };
  const { resting, moved } = before;
  const atRest = new Set(resting.obstacles);
  const joining = survey.obstacles.filter((placed) => !atRest.has(placed) && !moved.has(placed.obstacle.id));
  if (joining.length === 0) return before;
  return { resting, moved: new Set([...moved, ...joining.map(({ obstacle }) => obstacle.id)]) };
}
