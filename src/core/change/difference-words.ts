import type { Layout } from '../course/course.ts';
import { tradeTitle } from '../course/obstacle-title.ts';
import { printAngle } from '../measure/angle.ts';
import { printLength } from '../measure/length.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { paramWords } from '../pieces/param-words.ts';
import { pieceKind } from '../pieces/pieces.ts';
import type { Point } from '../plane/point.ts';
import { andList, uncapitalized } from '../text/sentence.ts';
import type { LayoutDifference, Motion, PieceDifference, ValueDifference } from './differences.ts';
import type { GoDifference } from './go-differences.ts';

/** A turn that a crew does not notice, radians: half a degree. */
const STRAIGHT = Math.PI / 360;
/** An obstacle that was rebuilt in its place went no further than this, metres. */
const IN_PLACE = 0.01;

/** "Fan, number 3": the designer's own name or the kind's, and its numbers in the go of the layout. */
export function obstacleLabel(obstacle: Obstacle, { ride }: Layout): string {
  const title = obstacle.name ?? tradeTitle(obstacle, { ride });
  const numbers = ride.legs.flatMap((leg, i) => (leg.obstacle === obstacle.id ? [String(i + 1)] : []));
  return numbers.length === 0 ? title : `${title}, number ${andList(numbers)}`;
}

/** "20' from the west and 30' from the south wall". */
export function placeWords({ x, y }: Point, unit: LengthUnit): string {
  return `${printLength(x, unit)} from the west and ${printLength(y, unit)} from the south wall`;
}

function pieceCount(count: number): string {
  return count === 1 ? '1 piece' : `${count} pieces`;
}

const EIGHTHS = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'] as const;

/** Towards where, as on the plan: x runs east, y north. */
function directionWords({ from, to }: Motion): string {
  const eighth = Math.round(Math.atan2(to.y - from.y, to.x - from.x) / (Math.PI / 4));
  return EIGHTHS[(eighth + 8) % 8] ?? 'east';
}

function turnWords(turn: number): readonly string[] {
  if (Math.abs(turn) < STRAIGHT) return [];
  return [`turned ${printAngle(Math.abs(turn))} to the ${turn > 0 ? 'left' : 'right'}`];
}

function motionWords(moved: Motion, unit: LengthUnit): readonly string[] {
  const { from, to, by, turn } = moved;
  if (by < IN_PLACE) return turnWords(turn);
  const far = `moved ${printLength(by, unit)} to the ${directionWords(moved)}`;
  return [far, `from ${placeWords(from, unit)}`, `to ${placeWords(to, unit)}`, ...turnWords(turn)];
}

function valueWords(obstacle: Obstacle, { param, from, to }: ValueDifference, unit: LengthUnit): string {
  const known = obstacleKind(obstacle.kind)?.params[param];
  if (known === undefined) return `${param} ${to}, was ${from}`;
  return `${uncapitalized(known.label)} ${paramWords(known, to, unit)}, was ${paramWords(known, from, unit)}`;
}

const PIECE_WORDS: Readonly<Record<PieceDifference['kind'], string>> = {
  came: 'more',
  went: 'fewer',
  moved: 'elsewhere',
  changed: 'set otherwise',
};

/** "1 pole more, 2 poles elsewhere": the pieces by kind and by what became of them. */
function pieceWords(pieces: readonly PieceDifference[]): readonly string[] {
  const counts = new Map<string, { readonly count: number; readonly title: string; readonly how: string }>();
  for (const { kind, piece } of pieces) {
    const title = uncapitalized(pieceKind(piece.kind)?.title ?? piece.kind);
    const key = `${kind} ${title}`;
    counts.set(key, { count: (counts.get(key)?.count ?? 0) + 1, title, how: PIECE_WORDS[kind] });
  }
  return [...counts.values()].map(({ count, title, how }) => `${count} ${title}${count === 1 ? '' : 's'} ${how}`);
}

/** What differs about one obstacle on the ground, without its name: "moved 12' to the east, from … to …". */
export function differenceWords(difference: LayoutDifference, unit: LengthUnit): string {
  switch (difference.kind) {
    case 'went':
      return `deleted, ${pieceCount(difference.obstacle.pieces.length)}`;
    case 'came':
      return `set ${placeWords(difference.obstacle.pose, unit)}, ${pieceCount(difference.obstacle.pieces.length)}`;
    case 'moved':
      return motionWords(difference, unit).join(', ');
    case 'rebuilt': {
      const { obstacle, values, pieces, mirrored } = difference;
      const how = [
        ...(mirrored ? ['the mirror image of what it was'] : []),
        ...values.map((each) => valueWords(obstacle, each, unit)),
        pieceWords(pieces).join(', '),
      ];
      return [`built otherwise: ${how.join('; ')}`, ...motionWords(difference, unit)].join(', ');
    }
  }
}

/** What differs about one obstacle in the go, without its name: "at the jog, was at the walk". */
export function goDifferenceWords(difference: GoDifference): string {
  switch (difference.kind) {
    case 'added':
      return `ridden as number ${difference.number}`;
    case 'left-out':
      return `no longer ridden, was number ${difference.number}`;
    case 'order':
      return `ridden as number ${difference.to}, was number ${difference.from}`;
    case 'way':
      return `the way is “${difference.to}”, was “${difference.from}”`;
    case 'gait':
      return `at the ${difference.to}, was at the ${difference.from}`;
    case 'approach':
      return `come to at the ${difference.to}, was at the ${difference.from}`;
    case 'lead': {
      const words = (lead: string | null): string => (lead === null ? 'the lead of the bend' : `the ${lead} lead`);
      return `on ${words(difference.to)}, was on ${words(difference.from)}`;
    }
  }
}
