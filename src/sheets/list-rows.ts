/** Rows of a list that is read at the gate or on a wall: cells with lines of several sizes, boxes to tick, a rule below. */
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, paragraph, type Role } from '../core/plane/role.ts';
import { CAP_HEIGHT, type FontWeight, textWidth, wrappedLines } from './lettering.ts';
import type { RowBlock } from './ruled-table.ts';

/** One line of letters in a cell. */
export interface CellLine {
  readonly text: string;
  /** Letter height, mm. */
  readonly size: number;
  readonly weight?: FontWeight;
}

/** A cell of a row. `width` is its own room, without the space to the next. */
export interface ListCell {
  /** Its column for who is read to, from 0, and over how many; absent: its place in the row, and one. */
  readonly column?: number;
  readonly span?: number;
  readonly x: number;
  readonly width: number;
  readonly align: 'start' | 'middle' | 'end';
  readonly lines: readonly CellLine[];
  /** A box to tick in its middle, mm. */
  readonly box?: number;
  /** A line goes through its words. */
  readonly struck?: true;
}

/** What a row looks like beside its cells. */
export interface RowLook {
  readonly width: number;
  /** Air above and below, mm. */
  readonly padding: number;
  /** Stroke of the rule below, mm. */
  readonly rule: number;
  /** Least height, mm. */
  readonly least?: number;
  /** What it is to who is read to: a row of so many columns, the head of one, or else a paragraph. */
  readonly reads?: { readonly columns: number; readonly tag: 'TH' | 'TD' };
}

const LEADING = 1.18;
const BOX_STROKE = 0.3;
const STRIKE = 0.4;

/** A text as lines of one size, as many as it needs. */
export function cellLines(text: string, width: number, style: Omit<CellLine, 'text'>): readonly CellLine[] {
  if (text === '') return [];
  return wrappedLines(text, width, style).map((line) => ({ text: line, ...style }));
}

function linesHeight({ lines }: ListCell): number {
  return lines.reduce((sum, { size }) => sum + size * LEADING, 0);
}

function line(from: readonly [number, number], to: readonly [number, number], width: number): Mark<'paper'> {
  return { kind: 'line', ink: 'words', points: [from, to].map(([x, y]) => ({ x, y })), width, role: ARTIFACT };
}

/** A square to tick about a middle. */
function boxMark(x: number, y: number, size: number): Mark<'paper'> {
  const half = size / 2;
  const corners = [
    [-half, -half],
    [half, -half],
    [half, half],
    [-half, half],
    [-half, -half],
  ] as const;
  const points = corners.map(([dx, dy]) => ({ x: x + dx, y: y + dy }));
  return { kind: 'line', ink: 'words', points, width: BOX_STROKE, role: ARTIFACT };
}

function cellMarks(cell: ListCell, [left, middle]: readonly [number, number], role: Role): Mark<'paper'>[] {
  const x = left + cell.x;
  if (cell.box !== undefined) return [boxMark(x + cell.width / 2, middle, cell.box)];
  const at = cell.align === 'start' ? x : cell.align === 'end' ? x + cell.width : x + cell.width / 2;
  let y = middle - linesHeight(cell) / 2;
  return cell.lines.flatMap(({ text, size, weight = 'regular' }): readonly Mark<'paper'>[] => {
    const centre = y + (size * LEADING) / 2;
    y += size * LEADING;
    if (text === '') return [];
    const words: Mark<'paper'> = {
      ...{ kind: 'words', at: { x: at, y: centre + (CAP_HEIGHT * size) / 2 }, text, size, weight },
      ...{ ink: 'words', align: cell.align, role },
    };
    if (cell.struck !== true) return [words];
    const width = textWidth(text, size, weight);
    const from = cell.align === 'start' ? at : cell.align === 'end' ? at - width : at - width / 2;
    return [words, line([from - 0.6, centre], [from + width + 0.6, centre], STRIKE)];
  });
}

/** The cells as a row as high as the highest of them. */
export function listRow(cells: readonly ListCell[], look: RowLook): RowBlock {
  const { width, padding, rule, least = 0, reads } = look;
  const height = Math.max(least, 2 * padding + Math.max(0, ...cells.map(linesHeight)));
  return {
    height,
    marks(x, y, table = { tag: 'Table' }) {
      const row: Role = reads === undefined ? paragraph() : { tag: 'TR', within: table, columns: reads.columns };
      const roleOf = ({ column, span = 1 }: ListCell, i: number): Role =>
        reads === undefined ? row : { tag: reads.tag, within: row, column: column ?? i, span };
      return [
        ...cells.flatMap((cell, i) => cellMarks(cell, [x, y + height / 2], roleOf(cell, i))),
        ...(rule > 0 ? [line([x, y + height], [x + width, y + height], rule)] : []),
      ];
    },
  };
}
