import { parallel } from '../../constraints/parallel.ts';
import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Limit, Proposal, RawFinding } from '../check.ts';
import { movePieceTo } from '../findings/constrained-edits.ts';
import { middleOfPieces } from '../findings/dimension.ts';
import { askerWords, bandWords, measuredWords } from '../findings/finding-words.ts';
import { restoreProposals } from '../findings/restore-proposals.ts';
import { piecesWords, pieceWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Poles that what holds them wants parallel. */
function parallels({ obstacle, pieces }: PlacedObstacle): readonly (readonly [PlacedPiece, PlacedPiece])[] {
  const byId = new Map(pieces.map((piece) => [piece.piece.id, piece]));
  return obstacle.constraints.flatMap((constraint) => {
    if (constraint.kind !== parallel.id) return [];
    const [a, b] = constraint.grips.flatMap((grip) => ('piece' in grip ? (byId.get(grip.piece) ?? []) : []));
    return a === undefined || b === undefined ? [] : [[a, b] as const];
  });
}

function parallelProposals(
  survey: Survey,
  obstacle: string,
  [a, b]: readonly [PlacedPiece, PlacedPiece],
): readonly Proposal[] {
  const off = Math.asin(Math.sin(b.pose.angle - a.pose.angle) * Math.sign(Math.cos(b.pose.angle - a.pose.angle)));
  const turn = (piece: PlacedPiece, other: PlacedPiece, by: number): readonly Proposal[] =>
    piece.piece.fixed === true
      ? []
      : [
          {
            idea: 'parallel',
            says: `Turn ${pieceWords(survey, piece.key)} parallel to ${pieceWords(survey, other.key)}`,
            edit: (course) => movePieceTo(course, piece.key, { ...piece.pose, angle: piece.pose.angle + by }),
          },
        ];
  return [...turn(b, a, -off), ...turn(a, b, off), ...restoreProposals(survey, obstacle)];
}

function unevenGapFindings(survey: Survey, placed: PlacedObstacle, limit: Limit): RawFinding[] {
  return parallels(placed).flatMap((pair): RawFinding[] => {
    const [a, b] = pair;
    const long = Math.min(a.figure.length, b.figure.length);
    const differs = long * Math.abs(Math.sin(b.pose.angle - a.pose.angle));
    if (isInBand(bandOf(limit), differs)) return [];
    const { id } = placed.obstacle;
    const { unit } = survey.course;
    const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
    return [
      {
        id: `uneven-gap:${a.key}+${b.key}`,
        check: 'uneven-gap',
        weight: limit.weight ?? unevenGap.weight,
        says: `Between ${pieceWords(survey, a.key)} and ${pieceWords(survey, b.key)} the two ends differ by ${measuredWords(limit, differs, unit)}; ${askerWords(limit)} ${bandWords(limit, unit)}.`,
        because: unevenGap.because,
        at: middleOfPieces([a, b]),
        ...(leg < 0 ? {} : { leg }),
        keys: [id, a.key, b.key],
        measured: differs,
        allowed: bandOf(limit),
        source: limit.source,
        group: {
          id: `uneven-gap:${id}`,
          says: (members) => {
            const most = Math.max(...members.map(({ measured }) => measured ?? 0));
            const poles = piecesWords(survey, [...new Set(members.flatMap(({ keys }) => keys.slice(1)))]);
            return `Between ${poles} the two ends of the gaps differ by up to ${measuredWords(limit, most, unit)}; ${askerWords(limit)} ${bandWords(limit, unit)}.`;
          },
        },
        proposals: parallelProposals(survey, id, pair),
      },
    ];
  });
}

export const unevenGap: Check = {
  id: 'uneven-gap',
  says: 'Poles that belong beside each other are parallel.',
  because: 'A gap that is wider at one end than at the other rides differently for every horse that drifts.',
  weight: 'should',
  limits: ['gap.uneven'],
  findings(survey, limits) {
    const limit = limits['gap.uneven'];
    return limit === undefined ? [] : survey.obstacles.flatMap((placed) => unevenGapFindings(survey, placed, limit));
  },
};
