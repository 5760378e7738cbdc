import { INCH, type Metres } from '../../measure/quantity.ts';
import type { Survey } from '../../survey.ts';
import type { Proposal } from '../check.ts';
import { usualOf } from '../rulebooks/rulebooks.ts';
import { valueWords } from './finding-words.ts';
import { obstacleWords } from './thing-words.ts';
import { rebuildNear } from './verified-fixes.ts';

/**
 * Where what is usual is not enough: the lane has to widen by more than what is missing, because the horse stands askew
 * in it.
 */
const WIDER = [2, 3, 5, 8];

/** The parameter that widens an obstacle, and the limit that says what is usual for it. */
const WIDTHS = { width: 'back.width', side: 'box.side' } as const;

/** A lane, turn or box built with more room, where this much is missing: as it is usually built, else step by step. */
export function widerProposals(survey: Survey, id: string, missing: Metres): readonly Proposal[] {
  const obstacle = survey.layout.obstacles.find((each) => each.id === id);
  const param = (['width', 'side'] as const).find((key) => typeof obstacle?.values[key] === 'number');
  if (obstacle === undefined || param === undefined) return [];
  const now = Number(obstacle.values[param]);
  const usual = usualOf(WIDTHS[param], survey.course.rulebook) ?? 0;
  const stepped = WIDER.map((times) => Math.ceil((now + times * missing) / INCH - 1e-9) * INCH);
  return [...(usual > now ? [usual] : []), ...stepped].map((value) => ({
    idea: 'widen',
    says: `Build ${obstacleWords(survey, id)} with ${valueWords('length', value, survey.course.unit)}`,
    edit: (course) => rebuildNear(course, id, { [param]: value }),
  }));
}
