import type { Layout } from '../course/course.ts';
import { placedObstacle } from '../course/placed.ts';
import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Obstacle } from '../obstacles/obstacle.ts';

/** One obstacle in two layouts. */
export interface ObstaclePair {
  readonly before: Obstacle;
  readonly after: Obstacle;
}

/** The obstacles of two layouts: those that are in both, in the order of the second, and those that are in one. */
export interface PairedObstacles {
  readonly pairs: readonly ObstaclePair[];
  readonly went: readonly Obstacle[];
  readonly came: readonly Obstacle[];
}

function apart(a: Obstacle, b: Obstacle): Metres {
  const [one, other] = [placedObstacle(a).bounds, placedObstacle(b).bounds];
  const x = (one.minX + one.maxX - other.minX - other.maxX) / 2;
  const y = (one.minY + one.maxY - other.minY - other.maxY) / 2;
  return Math.hypot(x, y);
}

/**
 * Which obstacle of one layout is which of another: the same id and kind; of the rest the nearest two of one kind, then
 * the nearest of what is left. So two layouts that were not branched from each other compare as well.
 */
export const pairedObstacles = memoizeByIdentity((from: Layout, to: Layout): PairedObstacles => {
  const partners = new Map<Obstacle, Obstacle>();
  const left = new Set(from.obstacles);
  const take = (before: Obstacle, after: Obstacle): void => {
    partners.set(after, before);
    left.delete(before);
  };
  for (const after of to.obstacles) {
    const before = from.obstacles.find(({ id, kind }) => id === after.id && kind === after.kind);
    if (before !== undefined) take(before, after);
  }
  const candidates = to.obstacles
    .filter((after) => !partners.has(after))
    .flatMap((after) =>
      [...left]
        .filter(({ kind }) => kind === after.kind)
        .map((before) => ({ before, after, far: apart(before, after) })),
    )
    .sort((a, b) => a.far - b.far);
  for (const { before, after } of candidates) {
    if (!partners.has(after) && left.has(before)) take(before, after);
  }
  return {
    pairs: to.obstacles.flatMap((after) => {
      const before = partners.get(after);
      return before === undefined ? [] : [{ before, after }];
    }),
    went: [...left],
    came: to.obstacles.filter((after) => !partners.has(after)),
  };
});
