import type { Weight } from '../core/checks/check.ts';
import type { Layout, Level } from '../core/course/course.ts';
import { tradeTitle } from '../core/course/obstacle-title.ts';
import type { PlacedPiece } from '../core/course/placed.ts';
import type { Gait } from '../core/horses/horse.ts';
import { printLength } from '../core/measure/length.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import type { Obstacle } from '../core/obstacles/obstacle.ts';
import type { Stage } from '../desk/input.ts';
import { appWords } from '../words/app.ts';
import { STAGE_NAMES } from '../words/desk.ts';
import { terms } from '../words/terms.ts';

/** Words that several rooms of the app show. */

/**
 * The designer's own name, or the kind's. What is not ridden has no number of the go to be told by, so it is told by the
 * number of its id where the layout has several of the kind.
 */
export function obstacleTitle(obstacle: Obstacle, layout: Layout): string {
  if (obstacle.name !== undefined && obstacle.name !== '') return obstacle.name;
  const title = tradeTitle(obstacle, layout);
  const isRidden = layout.ride.legs.some((leg) => leg.obstacle === obstacle.id);
  const isAlone = layout.obstacles.filter((each) => each.kind === obstacle.kind).length < 2;
  return isRidden || isAlone ? title : withNumber(title, obstacle.id);
}

/** `Pole 2`. */
export function pieceTitle(piece: PlacedPiece): string {
  return withNumber(piece.kind.title, piece.piece.id);
}

function withNumber(title: string, id: string): string {
  const number = /-(\d+)$/.exec(id)?.[1];
  return number === undefined ? title : `${title} ${number}`;
}

export const STAGES: readonly { readonly id: Stage; readonly title: string; readonly does: string }[] = [
  { id: 'set', title: STAGE_NAMES.set, does: appWords.layOutTheObstacles },
  { id: 'ride', title: STAGE_NAMES.ride, does: appWords.orderGaitsTime },
  { id: 'check', title: STAGE_NAMES.check, does: appWords.whatNeedsALook },
  { id: 'post', title: STAGE_NAMES.post, does: appWords.patternOnPaper },
  { id: 'change', title: STAGE_NAMES.change, does: appWords.compareAndChangeOver },
];

export const GAIT_WORDS: Readonly<Record<Gait, string>> = { walk: terms.walk, jog: terms.jog, lope: terms.lope };

export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  open: appWords.open,
  amateur: appWords.amateur,
  youth: appWords.youth,
  novice: appWords.novice,
  'walk-jog': appWords.walkAndJog,
  led: appWords.ledInHand,
};

export const WEIGHT_WORDS: Readonly<Record<Weight, string>> = {
  must: appWords.mustBeFixed,
  should: appWords.shouldBeLookedAt,
  note: appWords.worthKnowing,
};

/** Where something lies, as a person would say it: distances from the west and the south wall. */
export function positionWords(at: { readonly x: number; readonly y: number }, unit: LengthUnit): string {
  return appWords.position(printLength(at.x, unit), printLength(at.y, unit));
}
