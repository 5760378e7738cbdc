import { readCard } from '../core/score/read-card.ts';
import type { ScoreCard } from '../core/score/score-card.ts';

/** Each card has a place of its own, so that a tab writes nothing but the card it judges. */
const PREFIX = 'polewright-score/';

/** The place of a card in the browser's own store: that of a layout of the course in a slot. */
export function scoreCardKey(of: string): string {
  return PREFIX + of;
}

/** What this browser has of a card. `unreadable`: there is something that this program cannot read, and nobody overwrites it. */
export type KeptCard =
  | { readonly kind: 'kept'; readonly card: ScoreCard }
  | { readonly kind: 'none' }
  | { readonly kind: 'unreadable'; readonly why: string; readonly text: string };

/** The card of a layout; none too where the browser stores nothing. */
export function readScoreCard(of: string, storage: () => Pick<Storage, 'getItem'> = () => localStorage): KeptCard {
  let text: string | null;
  try {
    text = storage().getItem(scoreCardKey(of));
  } catch {
    return { kind: 'none' };
  }
  if (text === null) return { kind: 'none' };
  const read = readCard(text);
  return read.kind === 'read' ? { kind: 'kept', card: read.card } : { kind: 'unreadable', why: read.why, text };
}

/** Remembers it at once; false where the browser does not. */
export function writeScoreCard(
  of: string,
  card: ScoreCard,
  storage: () => Pick<Storage, 'setItem'> = () => localStorage,
): boolean {
  try {
    storage().setItem(scoreCardKey(of), JSON.stringify(card));
    return true;
  } catch {
    return false;
  }
}
