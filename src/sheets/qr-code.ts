/** A code that a phone reads, as marks on paper. */
import qrcode from 'qrcode-generator';
import type { Mark } from '../core/plane/mark.ts';
import type { PaperPoint } from './paper-transform.ts';

/** White round the code, in modules: by its standard (ISO/IEC 18004). */
const QUIET = 4;
/** Side of a module, mm: as it is wished, and the least that a phone still reads from a sheet in a hand. Estimates, with the usual printers. */
const MODULE = { wished: 0.4, least: 0.35 } as const;
/** A code larger than this takes the room of the pattern, mm with its white. */
const LARGEST_SIDE = 45;
/** Up to here the code is drawn so that a seventh of it may be smudged; larger ones for a fifteenth, mm. */
const ROBUST_SIDE = 40;

/** A code that can be printed. */
export interface QrCode {
  readonly text: string;
  /** Rows from the top, each from the left; true is dark. */
  readonly rows: readonly (readonly boolean[])[];
  /** The least side on paper with the white round it, mm. */
  readonly side: number;
}

function rowsOf(text: string, level: 'M' | 'L'): readonly (readonly boolean[])[] | undefined {
  const code = qrcode(0, level);
  code.addData(text, 'Byte');
  try {
    code.make();
  } catch {
    // More than the largest code holds.
    return undefined;
  }
  const places = Array.from({ length: code.getModuleCount() }, (_, i) => i);
  return places.map((row) => places.map((column) => code.isDark(row, column)));
}

function sideOf(rows: readonly unknown[], module: number): number {
  return (rows.length + 2 * QUIET) * module;
}

/** The code of a text of signs below 256; undefined where it would be too fine to read in the room that it may take. */
export function qrCode(text: string): QrCode | undefined {
  const robust = rowsOf(text, 'M');
  if (robust !== undefined && sideOf(robust, MODULE.wished) <= ROBUST_SIDE) {
    return { text, rows: robust, side: sideOf(robust, MODULE.wished) };
  }
  const rows = rowsOf(text, 'L');
  if (rows === undefined || sideOf(rows, MODULE.least) > LARGEST_SIDE) return undefined;
  return { text, rows, side: Math.min(LARGEST_SIDE, sideOf(rows, MODULE.wished)) };
}

/**
 * The marks of a code with its white round it: `at` is its top left corner, `size` its side, mm. Each row is one dashed
 * line, a hair wider than a module so that no light shows between rows.
 */
export function qrMarks({ rows }: QrCode, at: PaperPoint, size: number): readonly Mark<'paper'>[] {
  const module = size / (rows.length + 2 * QUIET);
  return rows.flatMap((row, i): readonly Mark<'paper'>[] => {
    const first = row.indexOf(true);
    const last = row.lastIndexOf(true);
    if (first < 0) return [];
    const dash: number[] = [];
    for (let column = first; column <= last; ) {
      let end = column;
      while (end <= last && row[end] === row[column]) end += 1;
      dash.push((end - column) * module);
      column = end;
    }
    // The last dash ends the line, and a list of dashes is even.
    const y = at.y + (i + QUIET + 0.5) * module;
    const x = (column: number) => at.x + (column + QUIET) * module;
    const points = [
      { x: x(first), y },
      { x: x(last + 1), y },
    ];
    return [{ kind: 'line', ink: 'words', points, width: module * 1.02, dash: [...dash, module] }];
  });
}
