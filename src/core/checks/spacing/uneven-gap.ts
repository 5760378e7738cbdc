import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Survey } from '../../survey.ts';
import type { Check, Found, Limit, Proposal } from '../check.ts';
import { heldAt, laidAgain, straightened } from '../findings/constrained-edits.ts';
import { middleOf } from '../findings/dimension.ts';
import { asker, bandWords, measuredWords, obstacleWords, pieceWords } from '../findings/finding-words.ts';
import { inBand } from '../rulebooks/band.ts';
import { bandOf } from '../rulebooks/rulebooks.ts';

/** Poles that what holds them wants parallel. */
function parallels({ obstacle, pieces }: PlacedObstacle): readonly (readonly [PlacedPiece, PlacedPiece])[] {
  const byId = new Map(pieces.map((piece) => [piece.piece.id, piece]));
  return obstacle.constraints.flatMap((constraint) => {
    if (constraint.kind !== 'parallel') return [];
    const [a, b] = constraint.grips.flatMap((grip) => ('piece' in grip ? (byId.get(grip.piece) ?? []) : []));
    return a === undefined || b === undefined ? [] : [[a, b] as const];
  });
}

function proposals(survey: Survey, obstacle: string, [a, b]: readonly [PlacedPiece, PlacedPiece]): readonly Proposal[] {
  const off = Math.asin(Math.sin(b.pose.angle - a.pose.angle) * Math.sign(Math.cos(b.pose.angle - a.pose.angle)));
  const turn = (piece: PlacedPiece, other: PlacedPiece, by: number): readonly Proposal[] =>
    piece.piece.fixed === true
      ? []
      : [
          {
            idea: 'parallel',
            says: `Turn ${pieceWords(survey, piece.key)} parallel to ${pieceWords(survey, other.key)}`,
            edit: (course) => heldAt(course, piece.key, { ...piece.pose, angle: piece.pose.angle + by }),
          },
        ];
  const name = obstacleWords(survey, obstacle);
  return [
    ...turn(b, a, -off),
    ...turn(a, b, off),
    {
      idea: 'straighten',
      says: `Bring the pieces of ${name} back to what holds them`,
      edit: (course) => straightened(course, obstacle),
    },
    { idea: 'again', says: `Lay ${name} out again`, edit: (course) => laidAgain(course, obstacle) },
  ];
}

function foundFor(survey: Survey, placed: PlacedObstacle, limit: Limit): Found[] {
  return parallels(placed).flatMap((pair): Found[] => {
    const [a, b] = pair;
    const long = Math.min(a.figure.length, b.figure.length);
    const differs = long * Math.abs(Math.sin(b.pose.angle - a.pose.angle));
    if (inBand(bandOf(limit), differs)) return [];
    const { id } = placed.obstacle;
    const { unit } = survey.course;
    const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === id);
    return [
      {
        id: `uneven-gap:${a.key}+${b.key}`,
        check: 'uneven-gap',
        weight: limit.weight ?? unevenGap.weight,
        says: `Between ${pieceWords(survey, a.key)} and ${pieceWords(survey, b.key)} the two ends differ by ${measuredWords(limit, differs, unit)}; ${asker(limit)} ${bandWords(limit, unit)}.`,
        because: unevenGap.because,
        at: middleOf([a, b]),
        ...(leg < 0 ? {} : { leg }),
        keys: [id, a.key, b.key],
        measured: differs,
        allowed: bandOf(limit),
        source: limit.source,
        proposals: proposals(survey, id, pair),
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
  run(survey, limits) {
    const limit = limits['gap.uneven'];
    return limit === undefined ? [] : survey.obstacles.flatMap((placed) => foundFor(survey, placed, limit));
  },
};
