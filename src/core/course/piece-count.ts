/** The number of an obstacle's pieces as its values tell it, and as it lies there. */
import { buildKind } from '../obstacles/build.ts';
import type { Obstacle, ObstacleKind } from '../obstacles/obstacle.ts';
import { obstacleKind } from '../obstacles/obstacles.ts';
import type { Values } from '../pieces/params.ts';

/** The ids of the pieces that a kind builds from values; empty where they do not build. */
function builtIds(kind: ObstacleKind, values: Values): string {
  const built = buildKind(kind, values);
  return built.kind === 'built' ? built.pieces.map(({ id }) => id).join(' ') : '';
}

/**
 * The count by which an obstacle's kind builds just the pieces that are there, where its values tell another: the
 * parameter and the number. Undefined where the values are right, or where no count gives these pieces.
 */
export function countThere(obstacle: Obstacle): { readonly param: string; readonly count: number } | undefined {
  const kind = obstacleKind(obstacle.kind);
  if (kind === undefined) return undefined;
  const there = obstacle.pieces.map(({ id }) => id).join(' ');
  if (builtIds(kind, obstacle.values) === there) return undefined;
  for (const [key, param] of Object.entries(kind.params)) {
    if (param.kind !== 'count') continue;
    for (let count = param.least; count <= param.most; count += 1) {
      if (builtIds(kind, { ...obstacle.values, [key]: count }) === there) return { param: key, count };
    }
  }
  return undefined;
}
