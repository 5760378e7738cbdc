import type { Entry } from '../../core/course/course.ts';
import { goWords } from '../../words/go.ts';

/** What an entry is called: its number with who rides, as far as they are known. */
export function entryName({ number, rider, horse }: Entry): string {
  const who = rider === '' ? horse : rider;
  return [number, who].filter((part) => part !== '').join(' ') || goWords.noName;
}
