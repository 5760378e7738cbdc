import { createStore } from 'zustand/vanilla';
import type { ScoreCard } from '../../core/score/score-card.ts';
import { type Tap, tapped } from '../../core/score/taps.ts';
import { type KeptCard, readScoreCard, writeScoreCard } from '../../storage/score-cards.ts';

/** A card while it is judged. */
export interface CardState {
  readonly card: ScoreCard;
  /** Cards before this one, the newest last; undo goes back through them. */
  readonly past: readonly ScoreCard[];
  /** Whether the browser remembers the last change. */
  readonly isKept: boolean;
  /** Another tab judges this card: nothing is changed here. */
  readonly isElsewhere: boolean;
  /** What is stored cannot be read, and why: nothing is written over it until a person says so. */
  readonly unreadable?: string;
}

export interface CardStore {
  state(): CardState;
  subscribe(listener: () => void): () => void;
  tap(tap: Tap): void;
  undo(): void;
  /** Another card in its place, which undo takes back. */
  replace(card: ScoreCard): void;
  /** Who judges: this tab, or another. */
  setElsewhere(isElsewhere: boolean): void;
  /** What another tab has stored. */
  follow(): void;
}

/** How a card is read and written under a name. */
interface Shelf {
  read(of: string): KeptCard;
  write(of: string, card: ScoreCard): boolean;
}

const BROWSER: Shelf = { read: (of) => readScoreCard(of), write: (of, card) => writeScoreCard(of, card) };
/** So many taps can be taken back. */
const MOST_PAST = 300;

/** The stored card under this name, brought up to date by `current`; a blank one where there is none. */
export function createCardStore(
  of: string,
  { blank, current }: { blank(): ScoreCard; current(card: ScoreCard): ScoreCard },
  shelf: Shelf = BROWSER,
): CardStore {
  const first = (): CardState => {
    const kept = shelf.read(of);
    const card = kept.kind === 'kept' ? current(kept.card) : blank();
    const common = { card, past: [], isKept: true, isElsewhere: false };
    return kept.kind === 'unreadable' ? { ...common, unreadable: kept.why } : common;
  };
  const store = createStore<CardState>()(first);
  const change = (card: ScoreCard, past: readonly ScoreCard[]): void => {
    const { unreadable: _, ...state } = store.getState();
    store.setState({ ...state, card, past, isKept: shelf.write(of, card) }, true);
  };
  const isClosed = () => store.getState().isElsewhere || store.getState().unreadable !== undefined;
  return {
    state: store.getState,
    subscribe: (listener) => store.subscribe(() => listener()),
    tap(tap) {
      if (isClosed()) return;
      const { card, past } = store.getState();
      const next = tapped(card, tap);
      if (next !== card) change(next, [...past, card].slice(-MOST_PAST));
    },
    undo() {
      if (isClosed()) return;
      const { past } = store.getState();
      const before = past.at(-1);
      if (before !== undefined) change(before, past.slice(0, -1));
    },
    replace(card) {
      if (store.getState().isElsewhere) return;
      const { card: before, past } = store.getState();
      change(card, [...past, before].slice(-MOST_PAST));
    },
    setElsewhere(isElsewhere) {
      // What the other tab wrote meanwhile is the card.
      const { past, ...now } = store.getState();
      const fresh = isElsewhere || now.isElsewhere ? first() : { ...now, past };
      store.setState({ ...fresh, isElsewhere }, true);
    },
    follow() {
      if (store.getState().isElsewhere) store.setState({ ...first(), isElsewhere: true }, true);
    },
  };
}
