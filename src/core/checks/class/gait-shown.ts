import { poseAt } from '../../plane/path.ts';
import type { Point } from '../../plane/point.ts';
import type { ShownGait } from '../../ride/line.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limits } from '../check.ts';
import { askerWords, bandWords, measuredWords } from '../findings/finding-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** The middle of the stretch, as a place for the finding. */
function middleOfShown(survey: Survey, { longest }: ShownGait): Point {
  const middle = (longest.from + longest.to) / 2;
  const element = survey.line.elements.find(({ from, length }) => from <= middle && middle <= from + length);
  if (element === undefined || element.path.length === 0) return survey.layout.ride.start;
  const { x, y } = poseAt(element.path, middle - element.from);
  return { x, y };
}

/** A level that does not lope has no lope to show. */
function isAsked(gait: string, limits: Limits): boolean {
  return gait !== 'lope' || limits['level.lope']?.most !== 0;
}

/** Counted over the longest stretch in one gait, obstacles included: a book that wants it between obstacles says so. */
export const gaitShown: Check = {
  id: 'gait-shown',
  about: 'course',
  says: 'Each gait is shown over the distance that the book asks for.',
  because: 'A gait that is only touched cannot be judged, and the horse has no time to settle in it.',
  weight: 'must',
  limits: ['shown.jog', 'shown.lope'],
  findings(survey, limits) {
    if (survey.layout.ride.legs.length === 0) return [];
    return survey.line.shown.flatMap((shown) => {
      const limit = limits[`shown.${shown.gait}`];
      if (limit === undefined || !isAsked(shown.gait, limits)) return [];
      const far = shown.longest.to - shown.longest.from;
      if (isInBand(bandOf(limit), far)) return [];
      const { unit } = survey.course;
      const has =
        far === 0
          ? `There is no ${shown.gait} in the course`
          : `The longest ${shown.gait} is ${measuredWords(limit, far, unit)}`;
      return [
        {
          id: `gait-shown:${shown.gait}`,
          check: 'gait-shown',
          weight: limit.weight ?? gaitShown.weight,
          says: `${has}; ${askerWords(limit)} ${bandWords(limit, unit)} of it in one piece.`,
          because: gaitShown.because,
          at: middleOfShown(survey, shown),
          keys: [],
          measured: far,
          allowed: bandOf(limit),
          source: limit.source,
          proposals: [],
        },
      ];
    });
  },
};
