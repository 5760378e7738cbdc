import type { Check } from '../check.ts';
import { askerWords, bandWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const poleCount: Check = {
  id: 'pole-count',
  about: 'course',
  says: 'The pole obstacle of the course has enough poles.',
  because: 'Over two or three poles a horse can get by on luck; the class wants to see a rhythm.',
  weight: 'should',
  limits: ['poles.count'],
  findings(survey, limits) {
    const limit = limits['poles.count'];
    const { legs } = survey.layout.ride;
    if (limit === undefined || legs.length === 0) return [];
    const counts = legs.map((_, leg) => survey.line.crossings.filter((crossing) => crossing.leg === leg).length);
    const most = Math.max(...counts);
    const band = bandOf(limit);
    if (isInBand(band, most)) return [];
    const leg = counts.indexOf(most);
    const at = survey.line.crossings.find((crossing) => crossing.leg === leg)?.pose ?? survey.layout.ride.start;
    const { unit } = survey.course;
    const obstacle = legs[leg]?.obstacle ?? '';
    const says =
      most === 0
        ? `The course has no poles to ride over; ${askerWords(limit)} ${bandWords(limit, unit)} in one obstacle.`
        : `The most poles are in ${obstacleWords(survey, obstacle)}, ${most}; ${askerWords(limit)} ${bandWords(limit, unit)} in one obstacle.`;
    return [
      {
        id: 'pole-count',
        check: 'pole-count',
        weight: limit.weight ?? 'should',
        says,
        because: poleCount.because,
        at: { x: at.x, y: at.y },
        ...(most === 0 ? {} : { leg }),
        keys: most === 0 ? [] : [obstacle],
        measured: most,
        allowed: band,
        source: limit.source,
        proposals: [],
      },
    ];
  },
};
