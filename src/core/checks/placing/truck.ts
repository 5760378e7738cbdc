import type { TruckUse } from '../../survey.ts';
import type { Check } from '../check.ts';
import { pieceWords } from '../findings/thing-words.ts';

/** The keys that the truck cannot serve: the last ones taken. */
function missingKeys({ stock, keys, used }: TruckUse): readonly string[] {
  return stock === null ? keys : keys.slice(keys.length - Math.max(0, used - stock.count));
}

export const truck: Check = {
  id: 'truck',
  about: 'course',
  says: 'The truck carries everything that the course needs.',
  because: 'What is not there on the day is replaced by something else, and the course rides differently.',
  weight: 'must',
  limits: [],
  findings: (survey) =>
    survey.truck.flatMap((use) => {
      const missing = missingKeys(use);
      if (missing.length === 0) return [];
      const at = survey.pieces.find((piece) => piece.key === missing[0])?.pose ?? { x: 0, y: 0 };
      const has = use.stock?.count ?? 0;
      const first = missing[0] === undefined ? '' : pieceWords(survey, missing[0]);
      const rest = missing.length > 1 ? ` and ${missing.length - 1} more` : '';
      return [
        {
          id: `truck:${use.stock?.id ?? 'none'}`,
          check: 'truck',
          weight: 'must',
          says:
            use.stock === null
              ? `The truck has nothing of the kind and size of ${first}${rest}.`
              : `The course uses ${use.used} of ${use.title.toLowerCase()}; the truck has ${has}, so ${missing.length === 1 ? '1 is' : `${missing.length} are`} missing.`,
          because: truck.because,
          at: { x: at.x, y: at.y },
          keys: [...new Set(missing.map((key) => key.split('/')[0] ?? key)), ...missing],
          measured: use.used,
          allowed: { most: has },
          source: 'the truck list of this course',
          proposals: [],
        },
      ];
    }),
};
