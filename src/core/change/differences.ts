import type { Layout } from '../course/course.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import { completeValues, type Params, type Value, type Values } from '../pieces/params.ts';
import type { Piece } from '../pieces/piece.ts';
import { pieceKind } from '../pieces/pieces.ts';
import { compose, normalizeAngle, type Pose } from '../plane/pose.ts';
import { type ObstaclePair, pairedObstacles } from './paired-obstacles.ts';

/** Less than a crew can see. */
export const SAME: Metres = 0.01;
export const SAME_ANGLE: Radians = Math.PI / 360;
/** A value that arithmetic made a little longer is the same value. */
const SAME_VALUE = 1e-6;

/** A parameter of an obstacle or a piece that has another value. */
export interface ValueDifference {
  readonly param: string;
  readonly from: Value;
  readonly to: Value;
}

/** A piece of an obstacle that was built otherwise. `moved` is against the other pieces, in the obstacle's frame. */
export type PieceDifference =
  | { readonly kind: 'came' | 'went'; readonly piece: Piece }
  | { readonly kind: 'moved'; readonly piece: Piece; readonly by: Metres; readonly turn: Radians }
  | { readonly kind: 'changed'; readonly piece: Piece; readonly values: readonly ValueDifference[] };

/** How far the frame of an obstacle went, and from where; on the ground. */
export interface Motion {
  readonly from: Pose;
  readonly to: Pose;
  readonly by: Metres;
  /** Counter-clockwise positive, within half a turn. */
  readonly turn: Radians;
}

/** What differs on the ground about one obstacle of two layouts. */
export type LayoutDifference =
  | { readonly kind: 'went' | 'came'; readonly obstacle: Obstacle }
  | (ObstaclePair & { readonly kind: 'moved'; readonly obstacle: Obstacle } & Motion)
  | (ObstaclePair & {
      readonly kind: 'rebuilt';
      readonly obstacle: Obstacle;
      readonly values: readonly ValueDifference[];
      readonly pieces: readonly PieceDifference[];
      /** It is the mirror image of what it was. */
      readonly mirrored: boolean;
    } & Motion);

function motion(from: Pose, to: Pose): Motion {
  const by = Math.hypot(to.x - from.x, to.y - from.y);
  return { from, to, by, turn: normalizeAngle(to.angle - from.angle) };
}

function isStill({ by, turn }: Pick<Motion, 'by' | 'turn'>): boolean {
  return by < SAME && Math.abs(turn) < SAME_ANGLE;
}

function isSameValue(a: Value, b: Value): boolean {
  return typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= SAME_VALUE : a === b;
}

function valueDifferences(params: Params, before: Values, after: Values): readonly ValueDifference[] {
  const [old, now] = [completeValues(params, before), completeValues(params, after)];
  return Object.keys(params).flatMap((param) => {
    const [from, to] = [old[param], now[param]];
    return from === undefined || to === undefined || isSameValue(from, to) ? [] : [{ param, from, to }];
  });
}

function pieceDifferences(before: Obstacle, after: Obstacle): readonly PieceDifference[] {
  const old = new Map(before.pieces.map((piece) => [piece.id, piece]));
  const stays = new Set<string>();
  const changed = after.pieces.flatMap((piece): readonly PieceDifference[] => {
    const was = old.get(piece.id);
    if (was === undefined || was.kind !== piece.kind) return [{ kind: 'came', piece }];
    stays.add(piece.id);
    const values = valueDifferences(pieceKind(piece.kind)?.params ?? {}, was.values, piece.values);
    const { by, turn } = motion(was.pose, piece.pose);
    return [
      ...(isStill({ by, turn }) ? [] : [{ kind: 'moved' as const, piece, by, turn }]),
      ...(values.length === 0 ? [] : [{ kind: 'changed' as const, piece, values }]),
    ];
  });
  const went = before.pieces.filter(({ id }) => !stays.has(id));
  return [...went.map((piece): PieceDifference => ({ kind: 'went', piece })), ...changed];
}

/** Whether every piece lies on the ground as it did, whatever the frames are. */
function liesTheSame(before: Obstacle, after: Obstacle, pieces: readonly PieceDifference[]): boolean {
  if (pieces.some(({ kind }) => kind !== 'moved')) return false;
  const old = new Map(before.pieces.map((piece) => [piece.id, compose(before.pose, piece.pose)]));
  return after.pieces.every(({ id, pose }) => {
    const was = old.get(id);
    return was !== undefined && isStill(motion(was, compose(after.pose, pose)));
  });
}

function difference({ before, after }: ObstaclePair): readonly LayoutDifference[] {
  if (before === after) return [];
  const pieces = pieceDifferences(before, after);
  if (liesTheSame(before, after, pieces)) return [];
  const moved = motion(before.pose, after.pose);
  const about = { obstacle: after, before, after, ...moved };
  if (pieces.length === 0) return isStill(moved) ? [] : [{ kind: 'moved', ...about }];
  const values = valueDifferences(obstacleKind(after.kind)?.params ?? {}, before.values, after.values);
  return [{ kind: 'rebuilt', ...about, values, pieces, mirrored: before.side !== after.side }];
}

/**
 * What a crew finds different on the ground when layout `to` lies where `from` lay: what went, then the rest in the order
 * of `to`. Nothing where less than a centimetre and half a degree differ.
 */
export function layoutDifferences(from: Layout, to: Layout): readonly LayoutDifference[] {
  const { pairs, went } = pairedObstacles(from, to);
  const partners = new Map(pairs.map((pair) => [pair.after, pair]));
  return [
    ...went.map((obstacle): LayoutDifference => ({ kind: 'went', obstacle })),
    ...to.obstacles.flatMap((obstacle) => {
      const pair = partners.get(obstacle);
      return pair === undefined ? [{ kind: 'came' as const, obstacle }] : difference(pair);
    }),
  ];
}

/** How many pieces must be carried, set or taken away: all of an obstacle that moved, those of one that was rebuilt. */
export function piecesTouched(list: readonly LayoutDifference[]): number {
  return list.reduce((sum, each) => {
    if (each.kind !== 'rebuilt' || !isStill(each)) return sum + each.obstacle.pieces.length;
    return sum + new Set(each.pieces.map(({ piece }) => piece.id)).size;
  }, 0);
}
