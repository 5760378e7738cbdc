import type { ObstacleKind } from '../../core/obstacles/obstacle.ts';
import type { PaletteGroup } from '../../desk/placing/palette.ts';

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[-\s]+/g, ' ')
    .trim();
}

/** Everything that somebody might call it: its title, its family's, its noun, and the trade's other words for these. */
function namesOf(kind: ObstacleKind, family: string): string {
  return [kind.title, family, kind.words?.noun ?? '', ...(kind.alsoCalled ?? [])].map(plain).join(' ');
}

/** The groups with the kinds whose names have every word that was typed, in any order; groups without one are left out. */
export function foundKinds(groups: readonly PaletteGroup[], typed: string): readonly PaletteGroup[] {
  const asked = plain(typed).split(' ');
  return groups
    .map(({ title, kinds }) => ({
      title,
      kinds: kinds.filter((kind) => {
        const names = ` ${namesOf(kind, title)}`;
        return asked.every((word) => names.includes(` ${word}`));
      }),
    }))
    .filter(({ kinds }) => kinds.length > 0);
}
