/** A table on paper: rows of cells in columns, a rule under each row, its head repeated on every page. */
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { CAP_HEIGHT, type FontWeight, wrappedLines } from './lettering.ts';

export interface TableColumn {
  readonly title: string;
  /** mm, with the space to the next column. */
  readonly width: number;
  readonly align: 'start' | 'end';
}

export interface TableCell {
  readonly text: string;
  readonly weight?: FontWeight;
}

/** One row; a row of one cell goes over the whole width, as the title of what follows. */
export type TableRow = readonly TableCell[];

/** A row or head that has a height and waits for its place. */
export interface RowBlock {
  readonly height: number;
  /** At a place, as a row of the table that has this role; without one, a table of its own. */
  marks(x: number, y: number, table?: Role): readonly Mark<'paper'>[];
}

/** Letters, mm, and how much air a row has above and below them. */
const LEADING = 1.25;
const PADDING = 1.1;
/** Between two columns. */
const COLUMN_SPACE = 3;
const RULE = 0.15;
const HEAD_RULE = 0.4;

function ruleBelow(width: number, stroke: number, [x, y]: readonly [number, number]): Mark<'paper'> {
  const points = [
    { x, y },
    { x: x + width, y },
  ];
  return { kind: 'line', ink: 'words', points, width: stroke, role: ARTIFACT };
}

interface RowStyle {
  readonly fontSize: number;
  /** Stroke below it, mm. */
  readonly rule: number;
  readonly tag: 'TH' | 'TD';
}

function rowBlock(columns: readonly TableColumn[], row: TableRow, { fontSize, rule, tag }: RowStyle): RowBlock {
  const whole = columns.reduce((sum, { width }) => sum + width, 0);
  const spans = row.length === 1 && columns.length > 1;
  const cells = row.map(({ text, weight = 'regular' }, i) => {
    const column = columns[i];
    const space = i < columns.length - 1 ? COLUMN_SPACE : 0;
    const width = spans || column === undefined ? whole : column.width - space;
    return {
      lines: wrappedLines(text, width, { size: fontSize, weight }),
      weight,
      width,
      align: column?.align ?? 'start',
    };
  });
  const lineCount = Math.max(1, ...cells.map(({ lines }) => lines.length));
  const height = lineCount * fontSize * LEADING + 2 * PADDING;
  return {
    height,
    marks(x, y, table = { tag: 'Table' }) {
      let left = x;
      const within: Role = { tag: 'TR', within: table, columns: columns.length };
      const words = cells.flatMap(({ lines, weight, width, align }, i) => {
        const role: Role = { tag, within, column: i, span: spans ? columns.length : 1 };
        const at = align === 'end' && !spans ? left + width : left;
        left += columns[i]?.width ?? 0;
        return lines.flatMap((text, line): readonly Mark<'paper'>[] => {
          if (text === '') return [];
          const baseline = y + PADDING + (line + 0.5) * fontSize * LEADING + (CAP_HEIGHT * fontSize) / 2;
          const side = spans ? 'start' : align;
          return [
            {
              kind: 'words',
              at: { x: at, y: baseline },
              text,
              size: fontSize,
              ink: 'words',
              align: side,
              weight,
              role,
            },
          ];
        });
      });
      return [...words, ruleBelow(whole, rule, [x, y + height])];
    },
  };
}

/** The head of a table. */
export function headRow(columns: readonly TableColumn[], fontSize: number): RowBlock {
  const row = columns.map(({ title }): TableCell => ({ text: title, weight: 'bold' }));
  const cells = row.length === 1 ? [...row, { text: '' }] : row;
  return rowBlock(columns, cells, { fontSize, rule: HEAD_RULE, tag: 'TH' });
}

/** The rows of a table, each with its height: nothing is cut, long cells are broken into lines. */
export function tableRows(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  fontSize: number,
): readonly RowBlock[] {
  return rows.map((row) => rowBlock(columns, row, { fontSize, rule: RULE, tag: 'TD' }));
}

/** A place on a page where rows may stand, mm. */
export interface TableRoom {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly height: number;
}

/** Marks with their page, and where the table ends. */
export interface SetTable {
  readonly marks: readonly { readonly page: number; readonly mark: Mark<'paper'> }[];
  /** The room that is left below the last row. */
  readonly rest: TableRoom;
}

/** Sets the rows into rooms one after the other, each beginning with the head. `room(i)` is the i-th, from 0. */
export function setTable(head: RowBlock, rows: readonly RowBlock[], room: (i: number) => TableRoom): SetTable {
  const marks: { page: number; mark: Mark<'paper'> }[] = [];
  const table: Role = { tag: 'Table' };
  let index = 0;
  let here = room(0);
  let y = here.y;
  const put = (block: RowBlock): void => {
    const isRepeated = block === head && index > 0;
    for (const mark of block.marks(here.x, y, table)) {
      marks.push({ page: here.page, mark: isRepeated ? { ...mark, role: ARTIFACT } : mark });
    }
    y += block.height;
  };
  put(head);
  for (const row of rows) {
    if (y + row.height > here.y + here.height && y > here.y + head.height) {
      index += 1;
      here = room(index);
      y = here.y;
      put(head);
    }
    put(row);
  }
  return { marks, rest: { ...here, y, height: Math.max(0, here.y + here.height - y) } };
}
