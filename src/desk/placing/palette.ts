import { OBSTACLE_FAMILIES, type ObstacleKind } from '../../core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../../core/obstacles/obstacles.ts';

/** Obstacle kinds that belong together in the list of what can be placed. */
export interface PaletteGroup {
  readonly title: string;
  readonly kinds: readonly ObstacleKind[];
}

/** Every obstacle kind in the group that it names itself; groups and kinds in the order of their lists. */
export function palette(kinds: readonly ObstacleKind[] = OBSTACLE_KINDS): readonly PaletteGroup[] {
  const groups = OBSTACLE_FAMILIES.map(({ id, title }) => ({
    title,
    kinds: kinds.filter((kind) => kind.family === id),
  }));
  return groups.filter((group) => group.kinds.length > 0);
}
