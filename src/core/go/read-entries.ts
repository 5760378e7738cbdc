import { LONGEST_NAME, MOST_ENTRIES } from '../course/course.ts';
import type { NewEntry } from '../course/edit-entries.ts';
import { plainCell } from '../text/safe-cell.ts';
import { andList, counted } from '../text/sentence.ts';
import { type CellRow, tableOf } from './cell-rows.ts';
import { type EntryColumns, type EntryField, entryColumns, isWornNumber } from './entry-columns.ts';
import { sharedNumbers } from './shared-numbers.ts';

/** A line that is no entry: why, with what would be right, and its text, so that it can be mended. */
export interface RefusedLine {
  readonly line: number;
  readonly text: string;
  readonly why: string;
}

/** The entries of a text. Each of its lines is an entry, the head, empty, or refused. */
export interface EntryReading {
  /** The line with the heads of the columns, where there is one. */
  readonly head?: string;
  readonly entries: readonly NewEntry[];
  readonly refused: readonly RefusedLine[];
  /** How it was taken, one sentence each: which column is what, what was left out, which numbers are worn twice. */
  readonly notes: readonly string[];
}

/** No more minutes late than a day has. */
const MOST_LATE = 1440;
const FIELD_WORDS: Readonly<Record<EntryField, string>> = {
  number: 'number',
  rider: 'rider',
  horse: 'horse',
  scratched: 'scratched',
  late: 'minutes late',
};

function cellOf({ cells }: CellRow, column: number | undefined): string {
  const cell = column === undefined ? '' : (cells[column] ?? '');
  return plainCell(cell.replace(/[\s\u00a0]+/g, ' ').trim());
}

function scratchedIn(text: string): boolean | undefined {
  const plain = text.toLowerCase();
  if (['', 'no', 'n', '0', 'false', '-', '–'].includes(plain)) return false;
  return ['yes', 'y', 'x', '1', 'true', 'scratched', 'scratch', 'scr', '✓'].includes(plain) ? true : undefined;
}

/** One line as an entry, or why it is none. */
function entryIn(row: CellRow, { columns, width }: EntryColumns): NewEntry | string {
  const [written, rider, horse] = [cellOf(row, columns.number), cellOf(row, columns.rider), cellOf(row, columns.horse)];
  const more = row.cells.slice(width).filter((cell) => cell.trim() !== '');
  if (columns.number === undefined && columns.horse === undefined) {
    // One column: a number may stand before the name.
    const [, first = '', rest = ''] = /^(\S+) +(.+)$/.exec(rider) ?? [];
    if (isWornNumber(first)) return { number: first.replace(/^#/, ''), rider: rest, horse };
  }
  const number = written.replace(/^#/, '');
  if (number !== '' && !isWornNumber(number)) {
    return `“${number}” is no number as it is worn; one such as 104 or 12A would be right.`;
  }
  const long = [rider, horse].find((name) => name.length > LONGEST_NAME);
  if (long !== undefined) {
    return `A name of ${long.length} letters is too long; at most ${LONGEST_NAME} would be right.`;
  }
  if (more.length > 0) {
    return `There are more cells than columns (“${more[0]?.trim()}”); a name with a comma stands in quotation marks, like "Halden, Wren".`;
  }
  if (number === '' && rider === '' && horse === '')
    return 'There is no number, rider or horse; one of them would be right.';
  const scratched = scratchedIn(cellOf(row, columns.scratched));
  if (scratched === undefined) {
    return `“${cellOf(row, columns.scratched)}” under scratched is not clear; yes, or nothing, would be right.`;
  }
  const minutes = cellOf(row, columns.late)
    .replace(',', '.')
    .replace(/ ?min$/, '');
  const late = Number(minutes);
  if (!(late >= 0 && late <= MOST_LATE)) {
    return `“${minutes}” is no number of minutes late; one from 0 to ${MOST_LATE} would be right.`;
  }
  return {
    ...{ number, rider, horse },
    ...(scratched ? { scratched } : {}),
    ...(late > 0 ? { late: late * 60 } : {}),
  };
}

function columnNotes({ columns, left, by }: EntryColumns): readonly string[] {
  const taken = (Object.keys(columns) as EntryField[])
    .toSorted((a, b) => (columns[a] ?? 0) - (columns[b] ?? 0))
    .map((field) => FIELD_WORDS[field]);
  const strange = left.filter(({ isOwn }) => !isOwn).map(({ title }) => `“${title}”`);
  return [
    ...(by === 'content' && taken.length > 1
      ? [`The first line has no heads of columns: taken as ${andList(taken)}.`]
      : []),
    ...(strange.length > 0
      ? [`Not taken: ${andList(strange)}. The list has number, rider, horse, scratched and minutes late.`]
      : []),
  ];
}

/**
 * The entries of a text: typed, or copied from a spreadsheet, with cells parted by tabs, semicolons or commas, with a line of
 * heads or none. Never throws: what cannot be read is refused line by line.
 */
export function readEntries(text: string): EntryReading {
  const { rows, open } = tableOf(text);
  const table = entryColumns(rows);
  const refused: RefusedLine[] = open.map(({ line, text: written }) => ({
    line,
    text: written,
    why: 'A quotation mark is opened and not closed; one at each end of the cell, or none, would be right.',
  }));
  const entries: NewEntry[] = [];
  const lines: number[] = [];
  for (const row of table.rows) {
    const read = entryIn(row, table);
    const why =
      typeof read === 'string'
        ? read
        : entries.length >= MOST_ENTRIES
          ? `A class has at most ${MOST_ENTRIES} entries; another class for those after them would be right.`
          : undefined;
    if (why !== undefined) refused.push({ line: row.line, text: row.text, why });
    else if (typeof read !== 'string') {
      entries.push(read);
      lines.push(row.line);
    }
  }
  const twice = sharedNumbers(entries).map(
    ({ number, at }) =>
      `Number ${number} is there ${at.length === 2 ? 'twice' : `${at.length} times`}: lines ${andList(at.map((i) => String(lines[i])))}.`,
  );
  const nothing = entries.length + refused.length === 0 ? ['There is no entry in it.'] : [];
  return {
    ...(table.head === undefined ? {} : { head: table.head }),
    entries,
    refused: refused.sort((a, b) => a.line - b.line),
    notes: [...(entries.length > 0 ? columnNotes(table) : []), ...twice, ...nothing],
  };
}

/** "12 entries", and how many lines were refused. */
export function readingWords({ entries, refused }: EntryReading): string {
  const read = `${counted(entries.length, 'entry', 'entries')} read`;
  return refused.length === 0 ? `${read}.` : `${read}; ${counted(refused.length, 'line')} could not be read.`;
}
