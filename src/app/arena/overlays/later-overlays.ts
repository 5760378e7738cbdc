/** Overlays that answer to something that was done, or explain: the arena is there before them. */
import { lazyComponent } from '../../lazy-panel.tsx';

export const ArenaLegend = lazyComponent(() => import('./legend.tsx').then((module) => module.ArenaLegend));
export const SuggestionBar = lazyComponent(() => import('./suggestion-bar.tsx').then((module) => module.SuggestionBar));
export const AlongBar = lazyComponent(() => import('./along-bar.tsx').then((module) => module.AlongBar), null, 'quiet');
export const HandOverlays = lazyComponent<{ readonly print: (far: number) => string }>(
  () => import('./hand-overlays.tsx').then((module) => module.HandOverlays),
  null,
  'quiet',
);
export const ConflictDialog = lazyComponent(() =>
  import('./conflict-dialog.tsx').then((module) => module.ConflictDialog),
);
export const QuestionDialog = lazyComponent(() =>
  import('./question-dialog.tsx').then((module) => module.QuestionDialog),
);
