import type { ObstacleKind } from '../../core/obstacles/obstacle.ts';
import type { PaletteGroup } from '../../desk/placing/palette.ts';

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[-\s]+/g, ' ')
    .trim();
}

/** Everything that somebody might call it: its title, its noun, and the trade's other words for these. */
function namesOf(kind: ObstacleKind): string {
  return [kind.title, kind.words?.noun ?? '', ...(kind.alsoCalled ?? [])].map(plain).join(' ');
}

/** Whether every word that was typed begins a word of the names. */
function isCalled(names: string, asked: readonly string[]): boolean {
  return asked.every((word) => ` ${plain(names)}`.includes(` ${word}`));
}

/**
 * The groups with the kinds that have every word that was typed in their names, in any order; where there are none, those
 * whose group is called so. Groups without any are left out.
 */
export function foundKinds(groups: readonly PaletteGroup[], typed: string): readonly PaletteGroup[] {
  const asked = plain(typed).split(' ');
  const own = groups
    .map(({ title, kinds }) => ({ title, kinds: kinds.filter((kind) => isCalled(namesOf(kind), asked)) }))
    .filter(({ kinds }) => kinds.length > 0);
  return own.length > 0 ? own : groups.filter(({ title }) => isCalled(title, asked));
}

/** Of the kinds that are found, the one that is meant most likely: most of the words typed are whole words of its title. */
export function meantKind(found: readonly PaletteGroup[], typed: string): ObstacleKind | undefined {
  const asked = plain(typed).split(' ');
  const whole = ({ title }: ObstacleKind) => {
    const words = plain(title).split(' ');
    return asked.filter((word) => words.includes(word)).length - words.length / 100;
  };
  const kinds = found.flatMap((group) => group.kinds);
  return kinds.reduce<ObstacleKind | undefined>(
    (best, kind) => (best === undefined || whole(kind) > whole(best) ? kind : best),
    undefined,
  );
}
