import { arenaWords } from '../../../words/arena.ts';
import { useTheme } from '../layers/use-theme.ts';
import { LATER_DASH } from '../painters/paint-carries.ts';
import { GhostLegend } from './ghost-legend.tsx';

const ARROWS = [
  { words: arenaWords.carried, dash: [] },
  { words: arenaWords.laterPass, dash: LATER_DASH },
] as const;

/** What the signs of a change-over mean. */
export function CarryLegend() {
  const { inks } = useTheme();
  return (
    <>
      {ARROWS.map(({ words, dash }) => (
        <li key={words}>
          <svg width="30" height="12" aria-hidden="true">
            <line x1="1" x2="22" y1="6" y2="6" stroke={inks.words} strokeWidth="1.8" strokeDasharray={dash.join(' ')} />
            <path d="M29 6 L20 2 L20 10 Z" fill={inks.words} />
          </svg>
          {words}
        </li>
      ))}
      <li>{arenaWords.fromTheTruck}</li>
      <li>{arenaWords.toTheTruck}</li>
      <GhostLegend titles={[arenaWords.liesThereNow]} />
    </>
  );
}
