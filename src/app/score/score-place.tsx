import { lazyComponent } from '../lazy-panel.tsx';
import { useIsScoreOpen } from './score-door.ts';

// Fetched with the other later parts: at the arena there may be no connection.
const Score = lazyComponent(() => import('./score.tsx').then((module) => module.Score));

/** The score card, where the address says that it is open. */
export function ScoreWhereOpen() {
  return useIsScoreOpen() ? <Score /> : null;
}
