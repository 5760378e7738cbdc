/** The rows of a card on paper: the head of its columns, and an entry with room for a hand. */
import type { Entry } from '../core/course/course.ts';
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import type { CardTier, PlacedColumn } from './card-grid.ts';
import { SMALLEST_FONT_SIZE, truncatedText } from './lettering.ts';
import { wordsMark } from './title-block.ts';

/** One line of an entry's row: what is written there. */
export interface CardTrack {
  readonly title: string;
  /** Figures that are printed to be ticked; absent: room to write. */
  readonly ticks?: readonly string[];
}

/** Somebody who rides; null: a blank row. */
export type CardLine = Entry | null;

/** A hand writes in 8 mm. */
const TRACK = 8.2;
/** Width of a sum, mm. */
export const SUM_WIDTH = 17;
const THIN = 0.2;
const THICK = 0.5;
const SMALL = SMALLEST_FONT_SIZE;

/** A straight line on paper. */
export function line(a: readonly [number, number], b: readonly [number, number], width: number): Mark<'paper'> {
  return { kind: 'line', ink: 'words', width, points: [a, b].map(([x, y]) => ({ x, y })), role: ARTIFACT };
}

/** A cell of the card as it is read out. */
type CellRole = Extract<Role, { tag: 'TH' | 'TD' }>;

interface CentredStyle {
  readonly size: number;
  readonly weight?: 'bold';
  readonly role: Role;
}

function centred(text: string, x: number, y: number, { size, weight, role }: CentredStyle): Mark<'paper'> {
  return {
    ...{ kind: 'words', at: { x, y }, text, size, weight: weight ?? 'regular', align: 'middle', ink: 'words' },
    role,
  };
}

/** How a card is divided, mm from the left edge of the paper. */
export interface CardGrid {
  readonly tiers: readonly CardTier[];
  readonly tracks: readonly CardTrack[];
  readonly entryWidth: number;
  readonly hasNames: boolean;
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly sums: readonly string[];
}

/** Entry and track, the legs of the longest tier, the sums. */
function columnCount({ tiers, sums }: CardGrid): number {
  return 2 + Math.max(...tiers.map(({ columns }) => columns.length)) + sums.length;
}

/** Where the sums begin: they stand at the right of the last tier. */
function sumsFrom({ right, sums }: CardGrid): number {
  return right - SUM_WIDTH * sums.length;
}

/** The head of a page's rows; `table` is what they are read out as. */
export function headMarks(
  grid: CardGrid,
  top: number,
  table: Role,
): { readonly marks: readonly Mark<'paper'>[]; readonly height: number } {
  const { tiers, left, right, sums } = grid;
  const marks: Mark<'paper'>[] = [];
  let y = top;
  for (const [i, { columns, headHeight }] of tiers.entries()) {
    const isLast = i === tiers.length - 1;
    const row: Role = { tag: 'TR', within: table, columns: columnCount(grid) };
    const head = (column: number): CellRole => ({ tag: 'TH', within: row, column, span: 1 });
    if (i === 0) marks.push(wordsMark('Entry', left + 1, y + 5, { size: SMALL, weight: 'bold', role: head(0) }));
    for (const [at, { number, lines, x, width }] of columns.entries()) {
      const middle = x + width / 2;
      const role = head(2 + at);
      marks.push(centred(String(number), middle, y + 5, { size: 4.6, weight: 'bold', role }));
      lines.forEach((text, k) => {
        marks.push(centred(text, middle, y + 6 + (k + 0.8) * 4.1, { size: SMALL, role }));
      });
      marks.push(line([x, y], [x, y + headHeight], THIN));
    }
    if (isLast) {
      const from = sumsFrom(grid);
      const roles = sums.map((_, k) => head(2 + columns.length + k));
      sums.forEach((title, k) => {
        const role = roles[k] ?? ARTIFACT;
        marks.push(centred(title, from + (k + 0.5) * SUM_WIDTH, y + 5, { size: SMALL, weight: 'bold', role }));
        marks.push(line([from + k * SUM_WIDTH, y], [from + k * SUM_WIDTH, y + headHeight], k === 0 ? THICK : THIN));
      });
      const role = roles.at(-1) ?? ARTIFACT;
      marks.push(centred(`from ${grid.base}`, right - SUM_WIDTH / 2, y + 9.6, { size: SMALL, role }));
    }
    y += headHeight;
    marks.push(line([left, y], [right, y], isLast ? THICK : THIN));
  }
  return { marks, height: y - top };
}

function tickMarks(
  { x, width }: PlacedColumn,
  { y, role }: { readonly y: number; readonly role: Role },
  ticks: readonly string[],
): readonly Mark<'paper'>[] {
  const each = width / ticks.length;
  return ticks.flatMap((text, i): readonly Mark<'paper'>[] => [
    centred(text, x + (i + 0.5) * each, y + 3.4, { size: SMALL, role }),
    // Short, so that a copy that loses all grey still tells them from the columns.
    ...(i === 0 ? [] : [line([x + i * each, y], [x + i * each, y + TRACK * 0.55], THIN)]),
  ]);
}

/** Height of an entry. */
export function rowHeight({ tiers, tracks }: CardGrid): number {
  return tiers.length * tracks.length * TRACK;
}

/** One entry: for each tier the tracks, one under the other. */
export function rowMarks(grid: CardGrid, entry: CardLine, top: number, table: Role): readonly Mark<'paper'>[] {
  const { tiers, tracks, left, right, entryWidth, sums, hasNames } = grid;
  const tierHeight = tracks.length * TRACK;
  const height = tiers.length * tierHeight;
  const marks: Mark<'paper'>[] = [];
  const rows = tiers.flatMap(() => tracks.map((): Role => ({ tag: 'TR', within: table, columns: columnCount(grid) })));
  const cell = (row: number, column: number): Role => {
    const within = rows[row];
    return within === undefined ? ARTIFACT : { tag: 'TD', within, column, span: 1 };
  };
  if (entry !== null) {
    const role = cell(0, 0);
    const short = (text: string) => truncatedText(text, entryWidth - 2, { size: SMALL });
    const number = truncatedText(entry.number, entryWidth - 2, { size: 5, weight: 'bold' });
    marks.push(wordsMark(number, left + 1, top + 5.6, { size: 5, weight: 'bold', role }));
    const names = hasNames ? [entry.rider, entry.horse].filter((each) => each !== '') : [];
    names.forEach((text, i) => {
      marks.push(wordsMark(short(text), left + 1, top + 10.2 + i * 4.2, { size: SMALL, role }));
    });
  }
  for (const [i, { columns }] of tiers.entries()) {
    const y = top + i * tierHeight;
    const end = i === tiers.length - 1 ? sumsFrom(grid) : right;
    for (const [k, { title, ticks }] of tracks.entries()) {
      const at = y + k * TRACK;
      const row = i * tracks.length + k;
      const role = cell(row, 1);
      marks.push(wordsMark(title, left + entryWidth + 1, at + TRACK / 2 + 1.2, { size: SMALL, role }));
      for (const [j, column] of columns.entries()) {
        if (ticks !== undefined) marks.push(...tickMarks(column, { y: at, role: cell(row, 2 + j) }, ticks));
      }
      if (k > 0) marks.push(line([left + entryWidth, at], [end, at], THIN));
    }
    for (const { x } of columns) marks.push(line([x, y], [x, y + tierHeight], THIN));
    if (i > 0) marks.push(line([left + entryWidth, y], [right, y], THIN));
    if (i === tiers.length - 1) {
      sums.forEach((_, k) => {
        marks.push(line([end + k * SUM_WIDTH, y], [end + k * SUM_WIDTH, y + tierHeight], k === 0 ? THICK : THIN));
      });
    }
  }
  marks.push(line([left + entryWidth, top], [left + entryWidth, top + height], THIN));
  marks.push(line([left, top + height], [right, top + height], THICK));
  return marks;
}
