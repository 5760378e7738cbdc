import { comparedLayouts, useComparedState } from '../../change/compared.ts';
import { useDeskState } from '../../desk-context.tsx';
import { useTheme } from '../layers/use-theme.ts';
import { GHOST_DASHES } from '../painters/paint-ghost.ts';

/** Titles of the layouts that lie under the shown one as ghosts; at another stage there are none. */
export function useGhostTitles(): readonly string[] {
  const state = useComparedState((compared) => compared);
  const course = useDeskState((desk) => desk.course);
  const isChange = useDeskState((desk) => desk.stage === 'change');
  return isChange && state.mode === 'ghost' ? comparedLayouts(course, state).map(({ title }) => title) : [];
}

/** Which outline is which layout. */
export function GhostLegend({ titles }: { readonly titles: readonly string[] }) {
  const theme = useTheme();
  return [...titles.entries()].map(([index, title]) => (
    <li key={GHOST_DASHES[index]?.join(' ')} className="legend-ghost">
      <svg width="26" height="12" aria-hidden="true">
        <rect
          x="1.5"
          y="1.5"
          width="23"
          height="9"
          fill="none"
          stroke={theme.ghosts[index]}
          strokeWidth="1.6"
          strokeDasharray={GHOST_DASHES[index]?.join(' ')}
        />
      </svg>
      <span>{title}</span>
    </li>
  ));
}
