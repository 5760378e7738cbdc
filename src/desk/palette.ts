import type { ObstacleKind } from '../core/obstacles/obstacle.ts';
import { OBSTACLE_KINDS } from '../core/obstacles/obstacles.ts';

/** Obstacle kinds that belong together in the list of what can be placed. */
export interface PaletteGroup {
  readonly title: string;
  readonly kinds: readonly ObstacleKind[];
}

const GROUPS: readonly (readonly [string, readonly string[]])[] = [
  ['Over poles', ['run', 'fan', 'spoke', 'box']],
  ['Back and side pass', ['back-lane', 'back-l', 'side-pass', 'side-pass-between']],
  ['Gate, bridge, water', ['gate', 'bridge', 'water-box', 'mailbox']],
  ['Markers', ['serpentine']],
  ['Scenery', ['scenery']],
];

/** Every obstacle kind in its group; a kind that no group names stands under "More". */
export function palette(kinds: readonly ObstacleKind[] = OBSTACLE_KINDS): readonly PaletteGroup[] {
  const named = GROUPS.map(([title, ids]) => ({
    title,
    kinds: ids.flatMap((id) => kinds.filter((kind) => kind.id === id)),
  }));
  const grouped = new Set(GROUPS.flatMap(([, ids]) => ids));
  const rest = { title: 'More', kinds: kinds.filter((kind) => !grouped.has(kind.id)) };
  return [...named, rest].filter((group) => group.kinds.length > 0);
}
