/** Paragraphs set into columns: measured first, then placed; nothing is cut and nothing shrinks by itself. */

import type { Mark } from '../core/plane/mark.ts';
import type { Role } from '../core/plane/role.ts';
import { CAP_HEIGHT, textWidth, wrappedLines } from './lettering.ts';

/**
 * A heading, or a paragraph with its hanging label ("3."). Headings stay with what follows. `size`: a font size of its
 * own, mm.
 */
export type TextItem = { readonly text: string; readonly size?: number } & (
  | { readonly kind: 'heading' }
  | { readonly kind: 'paragraph'; readonly hang?: string }
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
}

/** One line of letters before it has a place. */
interface TextRow {
  readonly marks: readonly RowWords[];
  readonly height: number;
  /** Space above, dropped at the top of a column. */
  readonly spaceBefore: number;
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
    if (item.kind === 'heading' || item.hang === undefined) {
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

/** Sets the items one after the other into the columns, at a letter height. */
export function flowedText(items: readonly TextItem[], columns: readonly Column[], fontSize: number): FlowedText {
  const marks: { page: number; mark: Mark<'paper'> }[] = [];
  const depths = columns.map(() => 0);
  const hang = hangingWidth(items);
  const roles = itemRoles(items);
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
      if (column === undefined || depth + row.height > column.height + 1e-9) return { marks, whole: false, depths };
      depth += above;
      const baseline = column.y + depth + (row.height - size * LEADING) / 2 + size * (CAP_HEIGHT + 0.16);
      for (const { text, x, weight, isLabel } of row.marks) {
        const at = { x: column.x + x, y: baseline };
        const role = roles[number]?.[isLabel ? 'label' : 'text'];
        const mark: Mark<'paper'> = { kind: 'words', at, text, size, ink: 'words', align: 'start', weight };
        marks.push({ page: column.page, mark: role === undefined ? mark : { ...mark, role } });
      }
      depth += row.height;
      depths[current] = depth;
    }
  }
  return { marks, whole: true, depths };
}

/** The least height at which the items fit side by side in so many columns of this width. */
export function balancedHeight(
  items: readonly TextItem[],
  columns: { count: number; width: number },
  fontSize: number,
): number {
  const { count, width } = columns;
  const side = (height: number): readonly Column[] =>
    Array.from({ length: count }, () => ({ page: 0, x: 0, y: 0, width, height }));
  const whole = flowedText(items, side(1e6), fontSize).depths[0] ?? 0;
  for (let height = whole / count; height < whole; height += fontSize * 0.5) {
    if (flowedText(items, side(height), fontSize).whole) return height;
  }
  return whole;
}
