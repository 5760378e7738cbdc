/**
 * go/ has who rides a class, and when: entries from a table, their order, and the time of each go. It knows no sheet and no
 * screen.
 */

/** One row of a table, with the line of the text on which it begins, from 1, and the text itself. */
export interface CellRow {
  readonly line: number;
  readonly text: string;
  readonly cells: readonly string[];
}

/** A table as it was typed or copied from a spreadsheet. */
export interface CellRows {
  /** Rows with something in them. */
  readonly rows: readonly CellRow[];
  /** Rows in which a quotation mark is opened and not closed. */
  readonly open: readonly CellRow[];
}

const LINE_END = /\r\n|\r|\n/;

interface Cell {
  readonly text: string;
  /** Where the separator or the line end after it stands. */
  readonly end: number;
}

/** A cell in quotation marks (RFC 4180) beginning at `from`; undefined where they are not closed or something follows. */
function quotedCell(text: string, from: number, by: string): Cell | undefined {
  const quoted = /[ ]*"((?:[^"]|"")*)"[ ]*/y;
  quoted.lastIndex = from;
  const found = quoted.exec(text);
  if (found === null) return undefined;
  const next = text[quoted.lastIndex];
  if (next !== undefined && next !== by && next !== '\n' && next !== '\r') return undefined;
  return { text: (found[1] ?? '').replaceAll('""', '"'), end: quoted.lastIndex };
}

function plainEnd(text: string, from: number, by: string): number {
  let end = from;
  while (end < text.length && text[end] !== by && text[end] !== '\n' && text[end] !== '\r') end += 1;
  return end;
}

/** The cells of a text that are parted by a separator; a quoted cell may hold separators and line ends. Nothing is lost. */
export function cellRows(text: string, by: string): CellRows {
  const rows: CellRow[] = [];
  const open: CellRow[] = [];
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const begin = at;
    const cells: string[] = [];
    let isOpen = false;
    for (;;) {
      const quoted = quotedCell(text, at, by);
      const end = quoted?.end ?? plainEnd(text, at, by);
      const cell = quoted?.text ?? text.slice(at, end);
      isOpen ||= quoted === undefined && /^ *"/.test(cell);
      cells.push(cell);
      at = end;
      if (text[at] !== by) break;
      at += 1;
    }
    const written = text.slice(begin, at);
    const row = { line, text: written, cells };
    if (cells.some((cell) => cell.trim() !== '')) (isOpen ? open : rows).push(row);
    if (text[at] === '\r' && text[at + 1] === '\n') at += 1;
    at += 1;
    line += written.split(LINE_END).length;
  }
  return { rows, open };
}

const SEPARATORS = ['\t', ';', ','] as const;

/** How many rows have the number of cells that most have, when that is more than one. */
function agreement({ rows }: CellRows): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  counts.delete(1);
  return Math.max(0, ...counts.values());
}

/** The table by the separator by which most rows have equally many cells: a tab, a semicolon or a comma, in this order. */
export function tableOf(text: string): CellRows {
  const plain = text.replace(/^\uFEFF/, '');
  const tried = SEPARATORS.map((by) => cellRows(plain, by));
  return tried.reduce((best, each) => (agreement(each) > agreement(best) ? each : best));
}
