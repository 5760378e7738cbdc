import type { ClassEntry, Entry } from './course.ts';

/** Those who ride, in the order of go. */
export function ridingEntries(list: readonly Entry[]): readonly Entry[] {
  return list.filter(({ scratched }) => scratched !== true);
}

/** How many ride a class: of a list those who are not scratched, else the number that was given. */
export function entryCount({ entries, list }: Pick<ClassEntry, 'entries' | 'list'>): number {
  return list === undefined ? entries : ridingEntries(list).length;
}
