import type { ScoreCard } from '../../core/score/score-card.ts';
import type { CardStore } from './card-store.ts';

/** What the frame shows, and what it cannot do itself. */
export interface ScoreFrameProps {
  readonly title: string;
  /** What its files are called. */
  readonly file: string;
  readonly store: CardStore;
  /** The rule book of the course, by its title. */
  readonly book: string;
  hasColumns(card: ScoreCard): boolean;
  takeColumns(): void;
  clear(): void;
}
