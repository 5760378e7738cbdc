import type { CellRow } from './cell-rows.ts';

/** What a column of a table of entries may hold. */
export const ENTRY_FIELDS = ['number', 'rider', 'horse', 'scratched', 'late'] as const;
export type EntryField = (typeof ENTRY_FIELDS)[number];

/** Heads of columns as offices write them, in small letters and digits alone. */
const HEADS: Readonly<Record<EntryField, readonly string[]>> = {
  number: [
    ...['number', 'no', 'nr', 'num', 'back', 'backno', 'backnumber', 'backnr', 'entry', 'entryno', 'entrynumber'],
    ...[
      'bib',
      'bridle',
      'bridleno',
      'bridlenumber',
      'exhibitorno',
      'exhibitornumber',
      'ridernumber',
      'startnumber',
      'startno',
    ],
  ],
  rider: ['rider', 'ridername', 'riders', 'exhibitor', 'exhibitorname', 'name', 'handler', 'shownby', 'competitor'],
  horse: ['horse', 'horsename', 'horses', 'nameofhorse', 'mount', 'pony', 'equine', 'animal'],
  scratched: ['scratched', 'scratch', 'scr', 'withdrawn'],
  late: ['late', 'latemin', 'minuteslate', 'lateminutes'],
};

/** A column that other programs, or our own table, write and that the list works out itself. */
const KNOWN_AND_LEFT = ['place', 'order', 'draw', 'go', 'aboutwhen', 'when', 'time'];

/** Which column holds what, and what was not taken. */
export interface EntryColumns {
  /** The text of the first row where it has the heads. */
  readonly head?: string;
  /** Rows without the head. */
  readonly rows: readonly CellRow[];
  readonly columns: Readonly<Partial<Record<EntryField, number>>>;
  /** The head of each column that was not taken: what it is called, and whether the list has its own. */
  readonly left: readonly { readonly title: string; readonly isOwn: boolean }[];
  /** How many cells a row may fill. */
  readonly width: number;
  /** By what the columns were told apart. */
  readonly by: 'head' | 'content';
}

function plainHead(cell: string): string {
  return cell
    .trim()
    .toLowerCase()
    .replace(/^#$/, 'number')
    .replace(/[^\p{Letter}\p{Number}]+/gu, '');
}

function fieldOfHead(cell: string): EntryField | undefined {
  const plain = plainHead(cell);
  return ENTRY_FIELDS.find((field) => HEADS[field].includes(plain));
}

/** A number as it is worn: digits, with a letter or two where a show has them. */
export function isWornNumber(text: string): boolean {
  return /^#?\d{1,5}\p{Letter}{0,2}$|^\p{Letter}{1,2}-?\d{1,5}$/u.test(text.trim());
}

function byHead(head: CellRow, rows: readonly CellRow[]): EntryColumns {
  const columns: Partial<Record<EntryField, number>> = {};
  const left: { title: string; isOwn: boolean }[] = [];
  for (const [i, cell] of head.cells.entries()) {
    const field = fieldOfHead(cell);
    if (field !== undefined && columns[field] === undefined) columns[field] = i;
    else if (cell.trim() !== '') left.push({ title: cell.trim(), isOwn: KNOWN_AND_LEFT.includes(plainHead(cell)) });
    else if (rows.some(({ cells }) => (cells[i] ?? '').trim() !== '')) {
      left.push({ title: `column ${i + 1}`, isOwn: false });
    }
  }
  return { head: head.text, rows, columns, left, width: head.cells.length, by: 'head' };
}

/** How many cells most rows have; the more of two that are equally frequent. */
function usualWidth(rows: readonly CellRow[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [most] = [...counts].toSorted(([a, m], [b, n]) => n - m || b - a);
  return most?.[0] ?? 0;
}

/** The first column that is mostly numbers, then the first two of the others that hold something. */
function byContent(rows: readonly CellRow[]): EntryColumns {
  const width = usualWidth(rows);
  const filled = Array.from({ length: width }, (_, i) => i).filter((i) =>
    rows.some(({ cells }) => (cells[i] ?? '').trim() !== ''),
  );
  const numbers = (i: number): number => rows.filter(({ cells }) => isWornNumber(cells[i] ?? '')).length;
  const number = filled.find((i) => numbers(i) * 2 > rows.length);
  const [rider, horse, ...others] = filled.filter((i) => i !== number);
  return {
    rows,
    columns: {
      ...(number === undefined ? {} : { number }),
      ...(rider === undefined ? {} : { rider }),
      ...(horse === undefined ? {} : { horse }),
    },
    left: others.map((i) => ({ title: `column ${i + 1}`, isOwn: false })),
    width,
    by: 'content',
  };
}

/** What the columns of a table hold: by the words of its first row, else by what stands in them. */
export function entryColumns(all: readonly CellRow[]): EntryColumns {
  const [first, ...rest] = all;
  const isHead =
    first?.cells.some((cell) => fieldOfHead(cell) !== undefined) === true && !first.cells.some(isWornNumber);
  return first !== undefined && isHead ? byHead(first, rest) : byContent(all);
}
