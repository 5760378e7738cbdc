import { capitalized } from '../../text/sentence.ts';
import type { Check } from '../check.ts';
import { askerWords, bandWords, valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const obstacleTime: Check = {
  id: 'obstacle-time',
  says: 'No obstacle takes longer than the judge waits.',
  because: 'A rider who is sent on has no score there, however well it went.',
  weight: 'note',
  limits: ['obstacle.seconds'],
  findings(survey, limits) {
    const limit = limits['obstacle.seconds'];
    if (limit === undefined) return [];
    const band = bandOf(limit);
    const { unit } = survey.course;
    return survey.layout.ride.legs.flatMap((leg, index) => {
      const parts = survey.line.elements.filter((element) => element.leg === index && element.part === 'obstacle');
      const seconds = parts.reduce((sum, element) => sum + element.seconds, 0);
      const at = parts[0]?.path[0]?.start;
      if (at === undefined || isInBand(band, seconds)) return [];
      return [
        {
          id: `obstacle-time:${leg.id}`,
          check: 'obstacle-time',
          weight: limit.weight ?? obstacleTime.weight,
          says: `${capitalized(obstacleWords(survey, leg.obstacle))} takes about ${valueWords('time', seconds, unit)}; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
          because: obstacleTime.because,
          at: { x: at.x, y: at.y },
          leg: index,
          keys: [leg.obstacle],
          measured: seconds,
          allowed: band,
          source: limit.source,
          proposals: [],
        },
      ];
    });
  },
};
