import { INCH } from '../measure/quantity.ts';
import { between } from '../plane/point.ts';
import type { Gap } from '../ride/line.ts';
import { inBand, MARGIN } from './band.ts';
import type { Check } from './check.ts';
import { gapNumber, gapProposals } from './gap-band.ts';
import { bandOf } from './rulebooks.ts';
import { obstacleWords, valueWords } from './words.ts';

/** On a curve the tape only nearly follows the line: a fix goes this much past the edge of what is even, metres. */
const PAST = INCH / 4;

/** What has to be taped so that the gap is so long along the line. */
function tapedFor({ taped, ridden }: Gap, wanted: number): number {
  if (Math.abs(ridden - taped) <= MARGIN) return wanted;
  return taped + ((wanted + Math.sign(wanted - ridden) * PAST - ridden) * taped) / ridden;
}

/** Inside the book's band, yet not what this horse does: only told where the band itself is met. */
export const landings: Check = {
  id: 'landings',
  says: 'The horse’s landings come out even in every gap.',
  because: 'Where no whole number of landings fits, the horse has to change its stride between the poles.',
  weight: 'note',
  limits: [],
  run: (survey, limits) =>
    survey.line.gaps.flatMap((gap) => {
      if (gap.landings.fits) return [];
      const limit = limits[`gap.${gap.gait}`];
      if (limit !== undefined && !inBand(bandOf(limit), gap.taped)) return [];
      const { unit } = survey.course;
      const { horse } = survey;
      const name = `Gap ${gapNumber(survey, gap)} of ${obstacleWords(survey, gap.obstacle)}`;
      const fits = gap.landings.nearest.map((value) => valueWords('length', value, unit)).join(' or ');
      const wanted = [...gap.landings.nearest]
        .sort((a, b) => Math.abs(a - gap.ridden) - Math.abs(b - gap.ridden))
        .map((ridden) => tapedFor(gap, ridden));
      return [
        {
          id: `landings:${gap.keys.join('+')}:${gap.gait}`,
          check: 'landings',
          weight: 'note',
          says: `${name} is ${valueWords('length', gap.ridden, unit)} along the line; at a ${gap.gait} the landings come out even at ${fits}.`,
          because: landings.because,
          at: between(gap.ends[0], gap.ends[1], 0.5),
          leg: gap.leg,
          keys: [gap.obstacle, ...gap.keys],
          measured: gap.ridden,
          source: horse.gaits[gap.gait].landing.source,
          proposals: gapProposals(
            survey,
            gap,
            wanted.filter((taped) => limit === undefined || inBand(bandOf(limit), taped)),
          ),
        },
      ];
    }),
};
