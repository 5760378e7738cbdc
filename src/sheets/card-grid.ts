/** How the columns of a card share the width of the paper: as tiers one under the other where one row cannot hold them. */
import { SMALLEST_FONT_SIZE, textWidth, truncatedText, wrappedLines } from './lettering.ts';

/** A column of the card, headed by the number of the leg and a few words. */
export interface GridColumn {
  readonly number: number;
  readonly name: string;
}

/** A column with its place, mm from the left edge of the card. */
export interface PlacedColumn extends GridColumn {
  readonly x: number;
  readonly width: number;
  /** The name as it stands in the head. */
  readonly lines: readonly string[];
  /** The head had no room for all of the name. */
  readonly isCut: boolean;
}

export interface CardTier {
  readonly columns: readonly PlacedColumn[];
  /** Height of its head. */
  readonly headHeight: number;
}

interface GridRoom {
  /** Where the columns begin and how far the card reaches, mm. */
  readonly from: number;
  readonly to: number;
  /** Kept free at the right of the last tier, for the sums. */
  readonly sums: number;
  /** No column is narrower. */
  readonly least: number;
}

const PADDING = 1;
const HEAD_LINE = 4.1;
const NUMBER_LINE = 6;
const MOST_LINES = 5;
/** A single word that is wider is broken. */
const WIDEST_WORD = 26;
const HEAD = { size: SMALLEST_FONT_SIZE } as const;

/** The words of a name; one with a hyphen may break after it. */
function parts(name: string): readonly string[] {
  return name.split(/(?<=-)|(?<=\s)/).filter((part) => part.trim() !== '');
}

function partWidth(part: string): number {
  return textWidth(part.trimEnd(), HEAD.size);
}

function leastWidth({ name }: GridColumn, least: number): number {
  const widest = Math.max(0, ...parts(name).map(partWidth));
  return Math.max(least, Math.min(widest, WIDEST_WORD) + 2 * PADDING);
}

/** The name in lines of this width, after hyphens too. */
function headLines(name: string, width: number): readonly string[] {
  const lines: string[] = [];
  for (const part of parts(name)) {
    const last = lines.at(-1);
    if (last !== undefined && partWidth(last + part) <= width) lines[lines.length - 1] = last + part;
    else
      lines.push(
        ...wrappedLines(part.trimEnd(), width, HEAD).map((line, i, all) => (i === all.length - 1 ? part : line)),
      );
  }
  return lines.map((line) => line.trimEnd());
}

function split<T>(list: readonly T[], count: number): readonly (readonly T[])[] {
  const size = Math.ceil(list.length / count);
  return Array.from({ length: count }, (_, i) => list.slice(i * size, (i + 1) * size));
}

function tierOf(columns: readonly GridColumn[], { from, least }: GridRoom, width: number): CardTier | undefined {
  const widths = columns.map((column) => leastWidth(column, least));
  const spare = (width - widths.reduce((sum, each) => sum + each, 0)) / Math.max(1, columns.length);
  if (spare < 0) return undefined;
  let x = from;
  const placed = columns.map((column, i): PlacedColumn => {
    const own = (widths[i] ?? least) + spare;
    const all = headLines(column.name, own - 2 * PADDING);
    const isCut = all.length > MOST_LINES;
    const shown = all.slice(0, MOST_LINES);
    const lines = isCut
      ? [...shown.slice(0, -1), truncatedText(`${shown.at(-1)} ${all[MOST_LINES]}`, own - 2 * PADDING, HEAD)]
      : shown;
    const at = { ...column, x, width: own, lines, isCut };
    x += own;
    return at;
  });
  const most = Math.max(1, ...placed.map(({ lines }) => lines.length));
  return { columns: placed, headHeight: NUMBER_LINE + most * HEAD_LINE + PADDING };
}

/** The columns in as few tiers as they fit, about as many in each. */
export function cardTiers(columns: readonly GridColumn[], room: GridRoom): readonly CardTier[] {
  const whole = room.to - room.from;
  for (let count = 1; count <= Math.max(1, columns.length); count += 1) {
    const groups = split(columns, count);
    const tiers = groups.flatMap((group, i) => tierOf(group, room, i === count - 1 ? whole - room.sums : whole) ?? []);
    if (tiers.length === count) return tiers;
  }
  throw new Error(`card: a column does not fit into ${whole} mm`);
}
