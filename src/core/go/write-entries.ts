import type { Entry } from '../course/course.ts';
import { safeCell } from '../text/safe-cell.ts';

const HEAD = ['Number', 'Rider', 'Horse', 'Scratched', 'Late (min)', 'About when'];

function cell(text: string): string {
  const safe = safeCell(text);
  return /[",;\t\r\n]|^ | $/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Entries in the order of go as a table (CSV, RFC 4180) that spreadsheets and `readEntries` read; `when` tells the time of a go. */
export function writeEntries(list: readonly Entry[], when: (entry: Entry) => string): string {
  const rows = list.map((entry) => {
    const { number, rider, horse, scratched, late } = entry;
    const minutes = late === undefined ? '' : String(Math.round((late / 60) * 100) / 100);
    return [number, rider, horse, scratched ? 'yes' : '', minutes, when(entry)];
  });
  return [HEAD, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}
