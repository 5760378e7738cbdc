import { layoutDifferences, SAME, SAME_ANGLE } from '../../core/change/differences.ts';
import { pairedObstacles } from '../../core/change/paired-obstacles.ts';
import type { Layout } from '../../core/course/course.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { type PlacedObstacle, type PlacedPiece, placedObstacle } from '../../core/course/placed.ts';
import { printAngle } from '../../core/measure/angle.ts';
import { printLength } from '../../core/measure/length.ts';
import type { LengthUnit, Metres, Radians } from '../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { distance } from '../../core/plane/point.ts';
import { normalizeAngle, type Pose } from '../../core/plane/pose.ts';
import { changeWords } from '../../words/change.ts';

/** What became of a thing of the shown layout since another one. */
export type Origin =
  | { readonly kind: 'moved'; readonly from: Pose; readonly to: Pose; readonly by: Metres; readonly turn: Radians }
  /** It lies the same, or stands where it stood and was built otherwise. */
  | { readonly kind: 'same' | 'rebuilt' }
  /** Only in the shown layout, or only in the other. */
  | { readonly kind: 'new' | 'gone' };

const NO_PIECES: readonly PlacedPiece[] = [];
const differencesOf = memoizeByIdentity(layoutDifferences);

/** The pieces of an obstacle that lie elsewhere, or not at all, in the obstacle of the shown layout. */
const piecesElsewhere = memoizeByIdentity(
  (ghost: PlacedObstacle, shown: PlacedObstacle | undefined): readonly PlacedPiece[] => {
    if (ghost === shown) return NO_PIECES;
    const lying = new Map(shown?.pieces.map((piece) => [piece.piece.id, piece]));
    return ghost.pieces.filter((piece) => {
      const same = lying.get(piece.piece.id);
      return same === undefined || same.kind !== piece.kind || !isSameSize(same, piece) || !isSamePlace(same, piece);
    });
  },
);

function isSameSize({ figure: a }: PlacedPiece, { figure: b }: PlacedPiece): boolean {
  return a === b || (Math.abs(a.length - b.length) < SAME && Math.abs(a.width - b.width) < SAME);
}

function isSamePlace({ pose: a }: { readonly pose: Pose }, { pose: b }: { readonly pose: Pose }): boolean {
  return distance(a, b) < SAME && Math.abs(normalizeAngle(a.angle - b.angle)) < SAME_ANGLE;
}

const lastGhosts = new WeakMap<Layout, readonly PlacedPiece[]>();

/**
 * What is drawn of another layout under the shown one: the pieces that lie elsewhere in it. The same list while they are the
 * same, so that it is not painted anew at each move of a drag.
 */
export function ghostPieces(ghost: Layout, shown: Layout): readonly PlacedPiece[] {
  const pieces = piecesOfGhost(ghost, shown);
  const last = lastGhosts.get(ghost);
  if (last?.length === pieces.length && last.every((piece, i) => piece === pieces[i])) return last;
  lastGhosts.set(ghost, pieces);
  return pieces;
}

function piecesOfGhost(ghost: Layout, shown: Layout): readonly PlacedPiece[] {
  const partners = new Map(pairedObstacles(ghost, shown).pairs.map(({ before, after }) => [before, after]));
  return ghost.obstacles.flatMap((obstacle) => {
    const same = partners.get(obstacle);
    return piecesElsewhere(placedObstacle(obstacle), same === undefined ? undefined : placedObstacle(same));
  });
}

function obstacleOrigin(from: Layout, shown: Layout, obstacle: Obstacle): Origin {
  const difference = differencesOf(from, shown).find((each) => each.obstacle === obstacle);
  if (difference === undefined) return { kind: 'same' };
  if (!('by' in difference)) return { kind: 'new' };
  const { from: before, to, by, turn } = difference;
  if (by < SAME && Math.abs(turn) < SAME_ANGLE) return { kind: 'rebuilt' };
  return { kind: 'moved', from: before, to, by, turn };
}

function pieceOrigin(from: Layout, shown: Layout, { obstacle, piece }: { obstacle: Obstacle; piece: string }): Origin {
  const pair = pairedObstacles(from, shown).pairs.find(({ after }) => after === obstacle);
  const find = (of: Obstacle | undefined) =>
    of === undefined ? undefined : placedObstacle(of).pieces.find((each) => each.piece.id === piece);
  const [before, after] = [find(pair?.before), find(obstacle)];
  if (before === undefined || after === undefined || before.kind !== after.kind) return { kind: 'new' };
  if (isSamePlace(before, after)) return { kind: isSameSize(before, after) ? 'same' : 'rebuilt' };
  const turn = normalizeAngle(after.pose.angle - before.pose.angle);
  return { kind: 'moved', from: before.pose, to: after.pose, by: distance(before.pose, after.pose), turn };
}

/**
 * Where the thing comes from that a key of the shown layout names: an obstacle by its frame, a piece by its middle.
 * A key that only the other layout has is one that is gone; undefined when neither has it.
 */
export function originOf(from: Layout, shown: Layout, key: string): Origin | undefined {
  const [id, piece] = [obstacleOf(key), pieceOf(key)];
  const obstacle = shown.obstacles.find((each) => each.id === id);
  if (obstacle === undefined) return from.obstacles.some((each) => each.id === id) ? { kind: 'gone' } : undefined;
  return piece === undefined ? obstacleOrigin(from, shown, obstacle) : pieceOrigin(from, shown, { obstacle, piece });
}

/** The obstacle of the shown layout that an obstacle of another one became; undefined when it is gone. */
export function becameOf(from: Layout, shown: Layout, id: string): string | undefined {
  return pairedObstacles(from, shown).pairs.find(({ before }) => before.id === id)?.after.id;
}

/** The obstacle of another layout that the thing of the shown one was; undefined when it is new. */
export function cameFrom(from: Layout, shown: Layout, key: string): string | undefined {
  const id = obstacleOf(key);
  const pair = pairedObstacles(from, shown).pairs.find(({ after }) => after.id === id);
  if (pair !== undefined) return pair.before.id;
  const isGone = shown.obstacles.every((each) => each.id !== id);
  return isGone && from.obstacles.some((each) => each.id === id) ? id : undefined;
}

/** `12' 3"`, `12' 3", turned 15°`: how far a thing was moved, for an arrow. */
export function moveWords(
  { by, turn }: { readonly by: Metres; readonly turn: Radians },
  { unit }: { readonly unit: LengthUnit },
): string {
  const length = by < SAME ? [] : [printLength(by, unit)];
  const angle = Math.abs(turn) < SAME_ANGLE ? [] : [changeWords.turned(printAngle(Math.abs(turn)))];
  return [...length, ...angle].join(', ');
}

/** What became of a thing since another layout: `moved 12' 3", turned 15° from Novice`. */
function originWords(origin: Origin, title: string, unit: LengthUnit): string {
  switch (origin.kind) {
    case 'moved':
      return (origin.by < SAME ? changeWords.otherwiseFrom : changeWords.movedFrom)(moveWords(origin, { unit }), title);
    case 'same':
      return changeWords.asIn(title);
    case 'rebuilt':
      return changeWords.builtOtherwiseIn(title);
    case 'new':
      return changeWords.notIn(title);
    case 'gone':
      return changeWords.onlyIn(title);
  }
}

/** Where a thing comes from in each of the other layouts, as parts of one sentence; empty when there are none. */
export function originsWords(
  key: string,
  { shown, others, unit }: { readonly shown: Layout; readonly others: readonly Layout[]; readonly unit: LengthUnit },
): string {
  return others
    .flatMap((layout) => {
      const origin = originOf(layout, shown, key);
      return origin === undefined ? [] : [originWords(origin, layout.title, unit)];
    })
    .join(', ');
}
