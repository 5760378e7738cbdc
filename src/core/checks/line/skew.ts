import { capitalized } from '../../text/sentence.ts';
import type { Check } from '../check.ts';
import { movePieceTo } from '../findings/constrained-edits.ts';
import { bandWords, valueWords } from '../findings/finding-words.ts';
import { restoreProposals } from '../findings/restore-proposals.ts';
import { piecesWords, pieceWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

export const skew: Check = {
  id: 'skew',
  says: 'Poles are crossed square.',
  because:
    'A horse that crosses a pole at a slant has a longer way with one side than with the other and tends to hit it.',
  weight: 'should',
  limits: ['crossing.skew'],
  findings(survey, limits) {
    const limit = limits['crossing.skew'];
    if (limit === undefined) return [];
    const band = bandOf(limit);
    return survey.line.crossings.flatMap((crossing) => {
      const off = Math.abs(crossing.skew);
      // The tolerance of bands is made for tapes; for an angle a hundredth of a degree is fine enough.
      if (isInBand(band, off)) return [];
      const { unit } = survey.course;
      return [
        {
          id: `skew:${crossing.key}:${survey.layout.ride.legs[crossing.leg]?.id ?? crossing.leg}`,
          check: 'skew',
          weight: limit.weight ?? skew.weight,
          says: `${capitalized(pieceWords(survey, crossing.key))} is crossed ${valueWords('angle', off, unit)} off square; ${bandWords(limit, unit)} rides well.`,
          because: skew.because,
          at: { x: crossing.pose.x, y: crossing.pose.y },
          leg: crossing.leg,
          keys: [crossing.obstacle, crossing.key],
          measured: off,
          allowed: band,
          source: limit.source,
          group: {
            id: `skew:${crossing.obstacle}:${survey.layout.ride.legs[crossing.leg]?.id ?? crossing.leg}`,
            says: (members) => {
              const most = Math.max(...members.map(({ measured }) => measured ?? 0));
              const poles = piecesWords(
                survey,
                members.flatMap(({ keys }) => keys.slice(1)),
              );
              return `${capitalized(poles)} are crossed up to ${valueWords('angle', most, unit)} off square; ${bandWords(limit, unit)} rides well.`;
            },
          },
          proposals: [
            {
              idea: 'square',
              says: `Turn ${pieceWords(survey, crossing.key)} square to the line`,
              edit: (course) => {
                const piece = survey.pieces.find(({ key }) => key === crossing.key);
                return piece === undefined || piece.piece.fixed === true
                  ? course
                  : movePieceTo(course, crossing.key, { ...piece.pose, angle: piece.pose.angle + crossing.skew });
              },
            },
            ...restoreProposals(survey, crossing.obstacle),
          ],
        },
      ];
    });
  },
};
