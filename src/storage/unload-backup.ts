import type { HistoryChange } from './step-log.ts';
import type { SavedStep } from './store.ts';

/** What a page that closes had not saved: the course, and the steps of its history that were not written. */
export interface Backup extends Partial<HistoryChange> {
  readonly slot: string;
  /** Of the present course. */
  readonly text: string;
}

export function writeBackup(backup: Backup): string {
  return JSON.stringify(backup);
}

/** Reads a backup; older programs wrote the slot, a line break and the course. */
export function readBackup(text: string): Backup | undefined {
  if (!text.startsWith('{"')) {
    const end = text.indexOf('\n');
    return end < 0 ? undefined : { slot: text.slice(0, end), text: text.slice(end + 1) };
  }
  try {
    // Written by `writeBackup`; what is not as it should be is found below.
    const read = JSON.parse(text) as { readonly [Field in keyof Backup]?: unknown } & Pick<Backup, 'change'>;
    if (typeof read.slot !== 'string' || typeof read.text !== 'string') return undefined;
    const { slot, present, change } = read;
    const isWhole = Number.isSafeInteger(present) && isNumber(change?.first) && isNumber(change?.last);
    if (!isWhole || typeof present !== 'number' || change === undefined || !change.put.every(isStep)) {
      return { slot, text: read.text };
    }
    return { slot, text: read.text, present, change };
  } catch {
    return undefined;
  }
}

function isNumber(value: unknown): boolean {
  return Number.isSafeInteger(value);
}

function isStep({ slot, number, label, text }: SavedStep): boolean {
  return typeof slot === 'string' && isNumber(number) && typeof label === 'string' && typeof text === 'string';
}
