import type { Survey } from '../../survey.ts';
import type { Proposal } from '../check.ts';
import { layOutAgain, straighten } from './constrained-edits.ts';
import { obstacleWords } from './thing-words.ts';

/** For pieces that do not lie where their obstacle has them: back to what holds them, or laid out again from its values. */
export function restoreProposals(survey: Survey, obstacle: string): readonly Proposal[] {
  const name = obstacleWords(survey, obstacle);
  return [
    {
      idea: 'straighten',
      says: `Bring the pieces of ${name} back to what holds them`,
      edit: (course) => straighten(course, obstacle),
    },
    { idea: 'again', says: `Lay ${name} out again`, edit: (course) => layOutAgain(course, obstacle) },
  ];
}
