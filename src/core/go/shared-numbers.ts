import type { NewEntry } from '../course/edit-entries.ts';

/** A number that several entries have, and their places in the list, 0 first. */
export interface SharedNumber {
  readonly number: string;
  readonly at: readonly number[];
}

/** The numbers that more than one entry has, whether small or large letters; in the order of the list. */
export function sharedNumbers(list: readonly Pick<NewEntry, 'number'>[]): readonly SharedNumber[] {
  const places = new Map<string, number[]>();
  for (const [i, { number }] of list.entries()) {
    const key = number.trim().toUpperCase();
    if (key === '') continue;
    const there = places.get(key);
    if (there === undefined) places.set(key, [i]);
    else there.push(i);
  }
  return [...places].filter(([, at]) => at.length > 1).map(([number, at]) => ({ number, at }));
}
