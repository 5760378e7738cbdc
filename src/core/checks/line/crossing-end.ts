import { capitalized } from '../../text/sentence.ts';
import type { Check, RawFinding } from '../check.ts';
import { askerWords, bandWords, measuredWords } from '../findings/finding-words.ts';
import { obstacleWords, piecesWords, pieceWords } from '../findings/thing-words.ts';
import { rebuildNear } from '../findings/verified-fixes.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const crossingEnd: Check = {
  id: 'crossing-end',
  says: 'Poles are crossed well inside their ends.',
  because: 'Near the end of a pole a horse that drifts runs out beside it instead of going over.',
  weight: 'should',
  limits: ['crossing.end'],
  findings(survey, limits) {
    const limit = limits['crossing.end'];
    if (limit === undefined) return [];
    const band = bandOf(limit);
    const byKey = new Map(survey.pieces.map((piece) => [piece.key, piece]));
    return survey.line.crossings.flatMap((crossing): RawFinding[] => {
      const length = byKey.get(crossing.key)?.figure.length ?? 0;
      const inner = Math.min(crossing.fraction, 1 - crossing.fraction) * length;
      // On a pole shorter than twice the band its middle is as far in as one can be.
      if (isInBand(band, inner) || Math.abs(crossing.fraction - 0.5) < 0.01) return [];
      const { unit } = survey.course;
      const obstacle = survey.layout.obstacles.find(({ id }) => id === crossing.obstacle);
      const line = obstacle?.values.line;
      const wanted = Math.min(0.5, (band.least ?? 0) / length);
      return [
        {
          id: `crossing-end:${crossing.key}:${survey.layout.ride.legs[crossing.leg]?.id ?? crossing.leg}`,
          check: 'crossing-end',
          weight: limit.weight ?? crossingEnd.weight,
          says: `${capitalized(pieceWords(survey, crossing.key))} is crossed ${measuredWords(limit, inner, unit)} from its end; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
          because: crossingEnd.because,
          at: { x: crossing.pose.x, y: crossing.pose.y },
          leg: crossing.leg,
          keys: [crossing.obstacle, crossing.key],
          measured: inner,
          allowed: band,
          source: limit.source,
          group: {
            id: `crossing-end:${crossing.obstacle}:${survey.layout.ride.legs[crossing.leg]?.id ?? crossing.leg}`,
            says: (members) => {
              const nearest = Math.min(...members.map(({ measured }) => measured ?? 0));
              const poles = piecesWords(
                survey,
                members.flatMap(({ keys }) => keys.slice(1)),
              );
              return `${capitalized(poles)} are crossed as near as ${measuredWords(limit, nearest, unit)} to their ends; ${askerWords(limit)} ${bandWords(limit, unit)}.`;
            },
          },
          proposals:
            typeof line === 'number'
              ? [
                  {
                    says: `Lead the line over ${obstacleWords(survey, crossing.obstacle)} further from the ends of its poles`,
                    edit: (course) =>
                      rebuildNear(course, crossing.obstacle, { line: line < 0.5 ? wanted : 1 - wanted }),
                  },
                ]
              : [],
        },
      ];
    });
  },
};
