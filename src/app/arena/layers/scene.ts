import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Line } from '../../../core/ride/line.ts';
import type { Survey } from '../../../core/survey.ts';
import type { DeskState } from '../../../desk/desk.ts';
import type { ComparedState } from '../../change/compared.ts';
import type { ShownPlan } from '../../change/shown-plan.tsx';
import type { ViewState } from '../../view.ts';
import type { Theme } from '../painters/inks.ts';
import type { TravelPart } from '../painters/paint-travel.ts';

/** All that the arena is painted from, as it is in one frame. */
export interface Scene {
  readonly desk: DeskState;
  /** The survey before the gesture, and what the gesture has moved since, by obstacle id. At rest: the desk's, and nothing. */
  readonly resting: Survey;
  readonly moved: ReadonlySet<string>;
  /** What a gesture has left of the line as it was before. At rest: nothing. */
  readonly stillParts: ReadonlySet<TravelPart>;
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

/** What a gesture has moved, by obstacle id, and the parts of the line that it has left alone. */
export interface Moved {
  readonly resting: Survey;
  readonly moved: ReadonlySet<string>;
  readonly stillParts: ReadonlySet<TravelPart>;
}

const NOTHING: ReadonlySet<string> = new Set();
const NO_PARTS: ReadonlySet<TravelPart> = new Set();

/** What is drawn of a line, each with all that it is drawn from beside itself: a way that stays may be ridden otherwise. */
const partsOf = memoizeByIdentity((line: Line): ReadonlyMap<TravelPart, string> => {
  const parts = new Map<TravelPart, string>(line.gaps.map(({ ends }) => [ends, '']));
  for (const { path, move, gait, turn, part } of line.elements) {
    parts.set(path, `${parts.get(path) ?? ''} ${move} ${gait} ${turn} ${part}`);
  }
  return parts;
});

/**
 * What a gesture has moved so far: obstacles that are no longer the objects they were at rest, and of the line what is
 * still the same. What has once moved stays moved until the end, and the answer is the same object while nothing joins
 * it, so that all else is painted once.
 */
export function movedBy({ gesture, survey }: Pick<DeskState, 'gesture' | 'survey'>, before: Moved | null): Moved {
  if (gesture === null || before === null) return { resting: survey, moved: NOTHING, stillParts: NO_PARTS };
  const { resting, moved } = before;
  const atRest = new Set(resting.obstacles);
  const joining = survey.obstacles.filter((placed) => !atRest.has(placed) && !moved.has(placed.obstacle.id));
  const [partsAtRest, parts] = [partsOf(resting.line), partsOf(survey.line)];
  // At rest all of the line is drawn on the live canvas: the first move of a gesture parts it.
  const left = before.stillParts === NO_PARTS ? [...partsAtRest.keys()] : [...before.stillParts];
  const still = left.filter((part) => parts.get(part) === partsAtRest.get(part));
  if (joining.length === 0 && still.length === before.stillParts.size) return before;
  return {
    resting,
    moved: joining.length === 0 ? moved : new Set([...moved, ...joining.map(({ obstacle }) => obstacle.id)]),
    stillParts: new Set(still),
  };
}
