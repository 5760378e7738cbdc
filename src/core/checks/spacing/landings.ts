import type { Sourced } from '../../horses/horse.ts';
import type { Gap } from '../../ride/line.ts';
import type { Check, Limit } from '../check.ts';
import { valueWords } from '../findings/finding-words.ts';
import { gapWords } from '../findings/thing-words.ts';
import { BAND_TOLERANCE, isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';
import { gapPlace, gapProposals, gapsSaid } from './gap-band.ts';

/**
 * A book for horses of another stride, such as a table of canter poles, knows more about them than the western data
 * here.
 */
function isForOthers(limit: Limit, { least = 0, most = Number.POSITIVE_INFINITY }: Sourced): boolean {
  const band = bandOf(limit);
  return (band.least ?? 0) > most || (band.most ?? Number.POSITIVE_INFINITY) < least;
}

/** As near to an even gap as anybody can tape. */
function isEven({ ridden, landings: { nearest } }: Gap): boolean {
  return nearest.some((even) => Math.abs(even - ridden) <= BAND_TOLERANCE);
}

const idOf = ({ keys, gait }: Gap): string => `landings:${keys.join('+')}:${gait}`;

/** Inside the book's band but not this horse's stride: reported only where the band itself is met. */
export const landings: Check = {
  id: 'landings',
  says: 'The horse’s landings come out even in every gap.',
  because: 'Where no whole number of landings fits, the horse has to change its stride between the poles.',
  weight: 'note',
  limits: [],
  findings: (survey, limits) => {
    const gapById = new Map(survey.line.gaps.map((gap) => [idOf(gap), gap]));
    return survey.line.gaps.flatMap((gap) => {
      if (gap.landings.fits || isEven(gap)) return [];
      const limit = limits[`gap.${gap.gait}`];
      if (limit !== undefined && isForOthers(limit, survey.horse.gaits[gap.gait].landing)) return [];
      if (limit !== undefined && !isInBand(bandOf(limit), gap.ridden)) return [];
      const { unit } = survey.course;
      const { horse } = survey;
      const fits = gap.landings.nearest.map((value) => valueWords('length', value, unit)).join(' or ');
      const measured = `${valueWords('length', gap.ridden, unit)} along the line; at a ${gap.gait} the landings come out even at ${fits}.`;
      const wanted = [...gap.landings.nearest].sort((a, b) => Math.abs(a - gap.ridden) - Math.abs(b - gap.ridden));
      return [
        {
          id: idOf(gap),
          check: 'landings',
          weight: 'note',
          says: `${gapWords(survey, [gap])} is ${measured}`,
          because: landings.because,
          ...gapPlace(gap),
          source: `${horse.gaits[gap.gait].landing.source}; poles are spaced for the stride of an average horse: a state university extension's article, Setting a trail course for success`,
          group: {
            id: `landings:${gap.obstacle}:${gap.gait}`,
            value: gap.ridden,
            says: gapsSaid(survey, gapById, measured),
          },
          proposals: gapProposals(
            survey,
            gap,
            wanted
              .filter((value) => limit === undefined || isInBand(bandOf(limit), value))
              .map((value) => ({ value, idea: `landings ${value}` })),
          ),
        },
      ];
    });
  },
};
