import type { Layout } from '../../core/course/course.ts';
import { placedObstacle } from '../../core/course/placed.ts';
import type { Metres, Radians } from '../../core/measure/quantity.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import { normalizeAngle } from '../../core/plane/pose.ts';

/** Less than a crew can see. */
export const SAME: Metres = 0.01;
export const SAME_ANGLE: Radians = Math.PI / 360;

/** What changed about an obstacle between two layouts. */
export type LayoutDifference =
  | { readonly kind: 'gone' | 'new' | 'rebuilt'; readonly obstacle: Obstacle; readonly pieces: number }
  | { readonly kind: 'moved'; readonly obstacle: Obstacle; readonly by: Metres; readonly turn: Radians };

/** What a crew changes to make layout `to` out of layout `from`; obstacles are the same when their ids and kinds are. */
export function layoutDifferences(from: Layout, to: Layout): readonly LayoutDifference[] {
  const before = new Map(from.obstacles.map((each) => [each.id, each]));
  const after = new Map(to.obstacles.map((each) => [each.id, each]));
  const gone = from.obstacles
    .filter((each) => after.get(each.id)?.kind !== each.kind)
    .map((obstacle): LayoutDifference => ({ kind: 'gone', obstacle, pieces: obstacle.pieces.length }));
  const rest = to.obstacles.flatMap((obstacle): readonly LayoutDifference[] => {
    const old = before.get(obstacle.id);
    if (old === obstacle) return [];
    const pieces = obstacle.pieces.length;
    if (old === undefined || old.kind !== obstacle.kind) return [{ kind: 'new', obstacle, pieces }];
    if (!sameInside(old, obstacle)) return [{ kind: 'rebuilt', obstacle, pieces }];
    const by = Math.hypot(obstacle.pose.x - old.pose.x, obstacle.pose.y - old.pose.y);
    const turn = normalizeAngle(obstacle.pose.angle - old.pose.angle);
    return by < SAME && Math.abs(turn) < SAME_ANGLE ? [] : [{ kind: 'moved', obstacle, by, turn }];
  });
  return [...gone, ...rest];
}

/** Whether the pieces lie to one another as before. */
function sameInside(a: Obstacle, b: Obstacle): boolean {
  if (a.pieces.length !== b.pieces.length) return false;
  return a.pieces.every((piece, index) => {
    const other = b.pieces[index];
    if (other === undefined || other.kind !== piece.kind) return false;
    const apart = Math.hypot(other.pose.x - piece.pose.x, other.pose.y - piece.pose.y);
    const turned = Math.abs(normalizeAngle(other.pose.angle - piece.pose.angle));
    return apart < SAME && turned < SAME_ANGLE && JSON.stringify(other.values) === JSON.stringify(piece.values);
  });
}

/** How many pieces must be carried, set or taken away: all pieces of what moved, is new, rebuilt or gone. */
export function piecesTouched(list: readonly LayoutDifference[]): number {
  return list.reduce((sum, each) => sum + placedObstacle(each.obstacle).pieces.length, 0);
}
