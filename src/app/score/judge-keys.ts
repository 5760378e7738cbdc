import type { ScoreCard } from '../../core/score/score-card.ts';
import type { Tap } from '../../core/score/taps.ts';

/** An entry at an obstacle. */
export interface JudgedPlace {
  readonly entry: string;
  readonly leg: string;
}

/** What a key does: something is given, or another place is shown. */
type KeyAct = { readonly kind: 'tap'; readonly tap: Tap } | { readonly kind: 'go'; readonly place: JudgedPlace };

/** The scores of the list from the least, in halves. */
export function scoreSteps({ scoring }: ScoreCard): readonly number[] {
  const { least, most } = scoring.scale;
  return Array.from({ length: Math.round((most - least) * 2) + 1 }, (_, i) => least + i / 2);
}

/** The obstacle so many further on, of the same entry; undefined past the ends. */
export function placeAside({ columns }: ScoreCard, { entry, leg }: JudgedPlace, by: 1 | -1): JudgedPlace | undefined {
  const next = columns[columns.findIndex((each) => each.leg === leg) + by];
  return next === undefined ? undefined : { entry, leg: next.leg };
}

/** The entry before or after, at its first obstacle. Who does not ride is passed over. */
export function entryAside(
  { entries, columns }: ScoreCard,
  { entry }: JudgedPlace,
  by: 1 | -1,
): JudgedPlace | undefined {
  const at = entries.findIndex(({ id }) => id === entry);
  const ahead = by === 1 ? entries.slice(at + 1) : entries.slice(0, Math.max(0, at)).toReversed();
  const next = ahead.find(({ scratched }) => scratched !== true);
  return next === undefined ? undefined : { entry: next.id, leg: columns[0]?.leg ?? '' };
}

/** What a key means at a place: 1 is the least score, and so on. */
export function keyAct(card: ScoreCard, place: JudgedPlace, key: string): KeyAct | undefined {
  const score = /^[1-9]$/.test(key) ? scoreSteps(card)[Number(key) - 1] : undefined;
  if (score !== undefined) return { kind: 'tap', tap: { kind: 'score', ...place, score } };
  const to = {
    ArrowRight: placeAside(card, place, 1),
    ArrowLeft: placeAside(card, place, -1),
    PageDown: entryAside(card, place, 1),
    PageUp: entryAside(card, place, -1),
  }[key];
  return to === undefined ? undefined : { kind: 'go', place: to };
}
