import type { LengthUnit } from '../../core/measure/quantity.ts';
import { rideWords } from '../../words/ride.ts';
import { gapSentence, type StripGap } from '../strip/track.ts';

/** Gaps of one leg of which the same is to be said. */
export interface AlikeGaps {
  readonly says: string;
  readonly fit: StripGap['fit'];
  /** Their numbers in the leg, 1 first. */
  readonly places: readonly number[];
}

/** The gaps of a leg, those that are told alike together, in the order of the first of each. */
export function alikeGaps(gaps: readonly StripGap[], unit: LengthUnit): readonly AlikeGaps[] {
  const found = new Map<string, AlikeGaps>();
  for (const [i, gap] of gaps.entries()) {
    const says = gapSentence(gap, unit).slice(gap.name.length + 2);
    const known = found.get(says);
    found.set(says, { says, fit: gap.fit, places: [...(known?.places ?? []), i + 1] });
  }
  return [...found.values()];
}

/** "Gap 2", "Gaps 1 to 4", "Gaps 1, 3". */
export function placesWords(places: readonly number[]): string {
  const [first = 0, second] = places;
  const last = places.at(-1) ?? first;
  if (second === undefined) return rideWords.gap(first);
  return last - first === places.length - 1 && places.length > 2
    ? rideWords.gapsTo(first, last)
    : rideWords.gaps(places.join(', '));
}
