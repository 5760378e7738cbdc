/** Paragraphs set into columns: measured first, then placed; nothing is cut and nothing shrinks by itself. */

import { memoizeByText } from '../core/memo/by-identity.ts';
import type { Mark } from '../core/plane/mark.ts';
import type { Point } from '../core/plane/point.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { CAP_HEIGHT, textWidth, wrappedLines } from './lettering.ts';
import { type QrCode, qrMarks } from './qr-code.ts';

/**
 * A heading, a paragraph with its hanging label ("3."), or a code with its sentence beside it. Headings stay with what
 * follows. `size`: a font size of its own, mm.
 */
export type TextItem = { readonly text: string; readonly size?: number } & (
  | { readonly kind: 'heading' }
  | { readonly kind: 'paragraph'; readonly hang?: string }
  | { readonly kind: 'code'; readonly code: QrCode }
);

/** A column on a page, mm. */
export interface Column {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Letter height, and the room of hanging numbers in ems. */
interface TextSetting {
  readonly size: number;
  readonly hang: number;
}

/** Words of a line: the hanging label, or what stands beside it. */
interface RowWords {
  readonly text: string;
  readonly x: number;
  readonly weight: 'regular' | 'bold';
  readonly isLabel: boolean;
  /** Below the row's own line, mm; absent: on it. */
  readonly down?: number;
}

/** One line of letters before it has a place. */
interface TextRow {
  readonly marks: readonly RowWords[];
  readonly height: number;
  /** Space above, dropped at the top of a column. */
  readonly spaceBefore: number;
  /** A code at the row's left, mm from its top. */
  readonly code?: { readonly code: QrCode; readonly down: number };
  /** How many rows after this one have to stay with it. */
  readonly keepWithNext: number;
}

const LEADING = 1.32;
const PARAGRAPH_SPACE = 0.42;
/** Between a hanging label and its text, in ems. */
const AFTER_HANG = 0.55;

/** Width of the hanging labels, in ems: the same for all, so that their text lines up. */
function hangingWidth(items: readonly TextItem[]): number {
  const hangs = items.flatMap((item) => (item.kind === 'paragraph' && item.hang !== undefined ? [item.hang] : []));
  return Math.max(1.2, ...hangs.map((hang) => textWidth(hang, 1, 'bold'))) + AFTER_HANG;
}

/** Between a code and its sentence, mm. The code has white of its own. */
const AFTER_CODE = 1;
/** A sentence in less room than this stands under its code, mm. */
const LEAST_BESIDE = 25;

/** The code as one row: its sentence beside it, about its middle, or under it where the column is narrow. */
function codeRow(item: Extract<TextItem, { kind: 'code' }>, width: number, size: number): TextRow {
  const { code, text } = item;
  const isBeside = width - code.side - AFTER_CODE >= LEAST_BESIDE;
  const x = isBeside ? code.side + AFTER_CODE : 0;
  const lines = wrappedLines(text, width - x, { size });
  const tall = lines.length * size * LEADING;
  const height = isBeside ? Math.max(code.side, tall) : code.side + tall;
  const first = isBeside ? (height - tall) / 2 : code.side;
  const middle = (height - size * LEADING) / 2;
  return {
    marks: lines.map((line, i) => {
      const down = first + i * size * LEADING - middle;
      return { text: line, x, weight: 'regular', isLabel: false, down };
    }),
    height,
    code: { code, down: isBeside ? (height - code.side) / 2 : 0 },
    spaceBefore: size * PARAGRAPH_SPACE,
    keepWithNext: 0,
  };
}

function brokenRows(item: TextItem, width: number, { size, hang }: TextSetting): readonly TextRow[] {
  if (item.kind === 'heading') {
    const lines = wrappedLines(item.text, width, { size, weight: 'bold' });
    return lines.map((text, index) => ({
      marks: [{ text, x: 0, weight: 'bold', isLabel: false }],
      height: size * LEADING,
      spaceBefore: index === 0 ? size * 1.1 : 0,
      keepWithNext: lines.length - index + 1,
    }));
  }
  if (item.kind === 'code') return [codeRow(item, width, size)];
  const indent = item.hang === undefined ? 0 : hang * size;
  const lines = wrappedLines(item.text, width - indent, { size });
  return lines.map((text, index) => ({
    marks: [
      ...(index === 0 && item.hang !== undefined
        ? [{ text: item.hang, x: 0, weight: 'bold' as const, isLabel: true }]
        : []),
      { text, x: indent, weight: 'regular' as const, isLabel: false },
    ],
    height: size * LEADING,
    spaceBefore: index === 0 ? size * PARAGRAPH_SPACE : 0,
    // A paragraph of up to six lines is kept whole; a longer one may break between lines.
    keepWithNext: lines.length <= 6 ? lines.length - index - 1 : 0,
  }));
}

/** By item and setting: a page is tried in many columns, of which most are equally wide. */
const knownRows = new WeakMap<TextItem, Map<string, readonly TextRow[]>>();

function rowsOf(item: TextItem, width: number, setting: TextSetting): readonly TextRow[] {
  const known = knownRows.get(item) ?? new Map<string, readonly TextRow[]>();
  knownRows.set(item, known);
  const key = `${width} ${setting.size} ${setting.hang}`;
  const rows = known.get(key) ?? brokenRows(item, width, setting);
  known.set(key, rows);
  return rows;
}

/** Height of a row and of those that have to stay with it. */
function heightFrom(rows: readonly TextRow[], from: number): number {
  const count = (rows[from]?.keepWithNext ?? 0) + 1;
  return rows
    .slice(from, from + count)
    .reduce((sum, row, index) => sum + row.height + (index === 0 ? 0 : row.spaceBefore), 0);
}

/** What the items are to who is read to: neighbours with hanging labels are one list. */
function itemRoles(items: readonly TextItem[]): readonly { readonly label: Role; readonly text: Role }[] {
  let list: Role | undefined;
  return items.map((item) => {
    if (item.kind !== 'paragraph' || item.hang === undefined) {
      list = undefined;
      const text: Role = { tag: item.kind === 'heading' ? 'H2' : 'P' };
      return { label: text, text };
    }
    list ??= { tag: 'L' };
    const within: Role = { tag: 'LI', within: list };
    return { label: { tag: 'Lbl', within }, text: { tag: 'LBody', within } };
  });
}

export interface FlowedText {
  /** Marks with the page on which they stand. */
  readonly marks: readonly { readonly page: number; readonly mark: Mark<'paper'> }[];
  /** Whether everything found its place. */
  readonly whole: boolean;
  /** How deep each column is filled, mm. */
  readonly depths: readonly number[];
}

/** A row in its place: its item by number, and where its upper edge and its baseline are on a page. */
interface PlacedRow {
  readonly item: number;
  readonly row: TextRow;
  readonly page: number;
  readonly top: number;
  readonly at: Point<'paper'>;
  readonly size: number;
}

/** The dark squares of a row's code. The sentence beside it says what it is. */
function codeMarks({ row, page, top, at }: PlacedRow): FlowedText['marks'] {
  if (row.code === undefined) return [];
  const { code, down } = row.code;
  return qrMarks(code, { x: at.x, y: top + down }, code.side).map((mark) => ({
    page,
    mark: { ...mark, role: ARTIFACT },
  }));
}

function rowMarks(items: readonly TextItem[], placed: readonly PlacedRow[]): FlowedText['marks'] {
  const roles = itemRoles(items);
  return placed.flatMap((each) => {
    const { item, row, page, at, size } = each;
    const words = row.marks.map(({ text, x, weight, isLabel, down = 0 }) => {
      const role = roles[item]?.[isLabel ? 'label' : 'text'];
      const style = { size, ink: 'words', align: 'start', weight, ...(role === undefined ? {} : { role }) } as const;
      return { page, mark: { kind: 'words', at: { x: at.x + x, y: at.y + down }, text, ...style } as const };
    });
    return [...codeMarks(each), ...words];
  });
}

/** Sets the items one after the other into the columns, at a letter height. */
export function flowedText(items: readonly TextItem[], columns: readonly Column[], fontSize: number): FlowedText {
  const placed: PlacedRow[] = [];
  const depths = columns.map(() => 0);
  let marks: FlowedText['marks'] | undefined;
  // Most texts are set only to see whether they fit: their marks are made when they are asked for.
  const flowed = (whole: boolean): FlowedText => ({
    whole,
    depths,
    get marks() {
      marks ??= rowMarks(items, placed);
      return marks;
    },
  });
  const hang = hangingWidth(items);
  let current = 0;
  let depth = 0;
  for (const [number, item] of items.entries()) {
    const width = columns[current]?.width ?? 0;
    const size = item.size ?? fontSize;
    const rows = rowsOf(item, width, { size, hang });
    for (const [index, row] of rows.entries()) {
      const before = depth === 0 ? 0 : row.spaceBefore;
      const together = index === 0 || row.keepWithNext === 0 ? heightFrom(rows, index) : row.height;
      // A heading also needs the first line under it.
      const extra = item.kind === 'heading' && index === 0 ? size * (LEADING + PARAGRAPH_SPACE) : 0;
      let column = columns[current];
      let above = before;
      if (column !== undefined && depth + before + together + extra > column.height + 1e-9 && depth > 0) {
        current += 1;
        depth = 0;
        above = 0;
        column = columns[current];
      }
      if (column === undefined || depth + row.height > column.height + 1e-9) return flowed(false);
      depth += above;
      const top = column.y + depth;
      const y = top + (row.height - size * LEADING) / 2 + size * (CAP_HEIGHT + 0.16);
      placed.push({ item: number, row, page: column.page, top, at: { x: column.x, y }, size });
      depth += row.height;
      depths[current] = depth;
    }
  }
  return flowed(true);
}

/** The least height at which the items fit side by side in so many columns of this width. */
export function balancedHeight(
  items: readonly TextItem[],
  { count, width }: { readonly count: number; readonly width: number },
  fontSize: number,
): number {
  return knownHeight(items, `${count} ${width} ${fontSize}`);
}

/** By count, width and letter height: a page is tried at many scales, and its columns are as wide at each. */
const knownHeight = memoizeByText((items: readonly TextItem[], columns: string): number => {
  const [count = 1, width = 0, fontSize = 0] = columns.split(' ').map(Number);
  const side = (height: number): readonly Column[] =>
    Array.from({ length: count }, () => ({ page: 0, x: 0, y: 0, width, height }));
  const whole = flowedText(items, side(1e6), fontSize).depths[0] ?? 0;
  for (let height = whole / count; height < whole; height += fontSize * 0.5) {
    if (flowedText(items, side(height), fontSize).whole) return height;
  }
  return whole;
});
