import { obstacleOf } from '../../course/ids.ts';
import { editCurrentLayout } from '../../course/layouts.ts';
import type { PlacedObstacle, PlacedPiece } from '../../course/placed.ts';
import type { Gait } from '../../horses/horse.ts';
import type { Survey } from '../../survey.ts';
import type { Limit, Proposal } from '../check.ts';
import { type MeasuredSize, polesOf, sizeCheck } from '../findings/dimension.ts';
import { valueWords } from '../findings/finding-words.ts';
import { obstacleWords } from '../findings/thing-words.ts';
import { isInBand } from '../rulebooks/band.ts';
import { bandOf, limitsOf } from '../rulebooks/rulebooks.ts';
import { isRaised } from './back-width.ts';

function raisedEndHeight({ piece }: PlacedPiece, end: 'raisedStart' | 'raisedEnd'): number {
  const value = piece.values[end];
  return typeof value === 'number' ? value : 0;
}

/** Heights of the raised poles that the obstacle's line crosses at a gait. */
function crossedPoles(obstacle: PlacedObstacle, survey: Survey, gait: Gait): readonly PlacedPiece[] {
  const raised = polesOf(obstacle).filter(
    (pole) => raisedEndHeight(pole, 'raisedStart') + raisedEndHeight(pole, 'raisedEnd') > 0,
  );
  // Most obstacles have none, and need no search of the line.
  if (raised.length === 0) return raised;
  const { id } = obstacle.obstacle;
  const { legs } = survey.layout.ride;
  const keys = new Set(
    survey.line.crossings.filter((each) => each.obstacle === id && legs[each.leg]?.gait === gait).map(({ key }) => key),
  );
  return raised.filter((pole) => keys.has(pole.key));
}

/**
 * The same without the poles that are higher than a jump may be: those have a finding already, and its fix brings them
 * down to what is right for raised poles.
 */
function polesUnderJump(obstacle: PlacedObstacle, survey: Survey, gait: Gait): readonly PlacedPiece[] {
  const jump = limitsOf(survey.course)['jump.height'];
  const poles = crossedPoles(obstacle, survey, gait);
  return jump === undefined ? poles : poles.filter((pole) => isInBand(bandOf(jump), heightOf(jump)(pole).value));
}

/** From the ground to the highest point of the pole. */
function topOf({ key, pose, figure }: PlacedPiece): MeasuredSize {
  return { value: figure.height, at: { x: pose.x, y: pose.y }, keys: [key] };
}

/** From the ground to the top of the pole at its middle. */
function topAtMiddle(piece: PlacedPiece): MeasuredSize {
  const ends = [raisedEndHeight(piece, 'raisedStart'), raisedEndHeight(piece, 'raisedEnd')];
  const low = Math.max(...ends) - (ends[0] ?? 0) / 2 - (ends[1] ?? 0) / 2;
  return { ...topOf(piece), value: piece.figure.height - low };
}

/** Where the book takes a height. */
function heightOf(limit: Limit): (piece: PlacedPiece) => MeasuredSize {
  return limit.measured === 'middle' ? topAtMiddle : topOf;
}

/** Every pole of the obstacle that is higher than it may be comes down by as much as the highest has to. */
function lowerProposals(survey: Survey, { keys: [key = ''] }: MeasuredSize, off: number): readonly Proposal[] {
  const id = obstacleOf(key);
  return [
    {
      says: `Lower the raised poles of ${obstacleWords(survey, id)} by ${valueWords('length', off, survey.course.unit)}`,
      edit: (course) =>
        editCurrentLayout(course, ({ obstacles }) => {
          for (const piece of obstacles.find((each) => each.id === id)?.pieces ?? []) {
            for (const end of ['raisedStart', 'raisedEnd'] as const) {
              const height = piece.values[end];
              if (typeof height === 'number' && height > 0) piece.values[end] = Math.max(0, height - off);
            }
          }
        }),
    },
  ];
}

/** The poles of a jump that is too high come down as far as the limit for raised poles asks, where that is lower. */
function lowerJumpProposals(survey: Survey, size: MeasuredSize, off: number): readonly Proposal[] {
  const limits = limitsOf(survey.course);
  const obstacle = survey.obstacles.find((each) => each.obstacle.id === obstacleOf(size.keys[0] ?? ''));
  const more = (['jog', 'lope'] as const).flatMap((gait) => {
    const limit = limits[`raised.${gait}`];
    if (limit === undefined || obstacle === undefined) return [];
    const { most = Number.POSITIVE_INFINITY } = bandOf(limit);
    return crossedPoles(obstacle, survey, gait).map((pole) => heightOf(limit)(pole).value - most);
  });
  return lowerProposals(survey, size, Math.max(off, ...more));
}

const because = 'The higher the pole, the more a horse has to fold its legs, and the harder a touch is.';

export const raisedWalkSeveral = sizeCheck({
  id: 'raised-walk-several',
  says: 'Several raised walk-overs are not too high.',
  because,
  weight: 'must',
  limit: 'raised.walk.several',
  what: 'the highest pole of',
  otherProposals: lowerProposals,
  sizes(obstacle, survey, limit) {
    const poles = crossedPoles(obstacle, survey, 'walk');
    return poles.length > 1 ? poles.map(heightOf(limit)) : [];
  },
});

export const raisedWalkSingle = sizeCheck({
  id: 'raised-walk-single',
  says: 'A single raised walk-over is not too high.',
  because,
  weight: 'must',
  limit: 'raised.walk.single',
  what: 'the raised pole of',
  otherProposals: lowerProposals,
  sizes(obstacle, survey, limit) {
    const poles = crossedPoles(obstacle, survey, 'walk');
    return poles.length === 1 ? poles.map(heightOf(limit)) : [];
  },
});

export const raisedJog = sizeCheck({
  id: 'raised-jog',
  says: 'Raised jog-overs are not too high.',
  because,
  weight: 'must',
  limit: 'raised.jog',
  what: 'the highest pole of',
  otherProposals: lowerProposals,
  sizes: (obstacle, survey, limit) => polesUnderJump(obstacle, survey, 'jog').map(heightOf(limit)),
});

/** A book without a height for raised poles may still have one for jumps: nothing that is ridden over is higher. */
export const jumpHeight = sizeCheck({
  id: 'jump-height',
  says: 'Nothing that is ridden over is higher than a jump may be.',
  because,
  weight: 'must',
  limit: 'jump.height',
  what: 'the highest pole of',
  otherProposals: lowerJumpProposals,
  sizes: (obstacle, survey, limit) =>
    (['jog', 'lope'] as const).flatMap((gait) => crossedPoles(obstacle, survey, gait).map(heightOf(limit))),
});

export const raisedLope = sizeCheck({
  id: 'raised-lope',
  says: 'Raised lope-overs are not too high.',
  because,
  weight: 'must',
  limit: 'raised.lope',
  what: 'the highest pole of',
  otherProposals: lowerProposals,
  sizes: (obstacle, survey, limit) => polesUnderJump(obstacle, survey, 'lope').map(heightOf(limit)),
});

export const backRaisedHeight = sizeCheck({
  id: 'back-raised-height',
  says: 'The poles of a raised back-through are not too high.',
  because: 'A backing horse does not see a pole: a high one is sat on instead of touched.',
  weight: 'must',
  limit: 'back.raised.height',
  what: 'the highest pole of',
  otherProposals: lowerProposals,
  onlyDeclared: true,
  sizes: (obstacle) => (isRaised(obstacle) ? polesOf(obstacle).map(topOf) : []),
});

export const sidePassHeight = sizeCheck({
  id: 'side-pass-height',
  says: 'A pole that is side passed is not too high.',
  because: 'The horse goes over it sideways with both pairs of legs, and cannot jump.',
  weight: 'must',
  limit: 'side-pass.height',
  what: 'the highest pole of',
  otherProposals: lowerProposals,
  onlyDeclared: true,
  sizes: (obstacle) => polesOf(obstacle).map(topOf),
});
