/** How a page is divided between drawing and words: words below, words beside, or words on the next page. */

import { memoizeByText } from '../core/memo/by-identity.ts';
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { balancedHeight, type Column, flowedText, type TextItem } from './flow.ts';
import { rowsOf } from './frame-rows.ts';
import { legendBar, type SheetLegend } from './legend.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import type { PaperTransform } from './paper-transform.ts';
import type { PageOptions } from './sheet.ts';
import { type SheetHead, titleBlock } from './title-block.ts';

/** A drawing with its words, before it is known how they share the paper. */
export interface PageContent {
  readonly head: SheetHead;
  /** What has to be on the drawing, metres. */
  readonly extent: Bounds;
  readonly legend: SheetLegend;
  /** The drawing under its transform; `bounds` is the part of the page that labels may use, `row` what is kept for frames. */
  draw(transform: PaperTransform, bounds: Bounds, row?: Bounds): readonly Mark<'paper'>[];
  /** How much larger a drawing has to be before its words go overleaf; absent: half as large again. */
  readonly overleaf?: number;
  /** Frames at a scale that have no room in the drawing, mm: the page keeps a row for them. Absent: none. */
  readonly frames?: (scale: number, turned: boolean) => readonly PaperSize[];
  /** Whether the drawing has room for all of its frames. */
  readonly hasRoom?: (transform: PaperTransform, bounds: Bounds) => boolean;
  /** One sentence about a page for a screen reader; the first is 0. */
  about(page: number): string;
  /** What is to be done, in words. */
  readonly steps: readonly TextItem[];
  /** Cautions and notes. */
  readonly notes: readonly TextItem[];
  /** Letter heights of words that have pages of their own, mm, the best first; absent: to be read on a wall. */
  readonly fontSizes?: readonly number[];
  /** How many pages of another make follow and are counted with these; absent: none. */
  readonly following?: number;
  /** The same of pages before; absent: none. */
  readonly preceding?: number;
}

export interface PageLayout {
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  readonly turned: boolean;
  readonly words: 'below' | 'beside' | 'after';
  /** Letter height of the words, mm. */
  readonly fontSize: number;
  readonly pageCount: number;
  /** The room of the drawing with its edge. */
  readonly drawing: Bounds;
  /** Columns of the steps, and of the notes where they do not follow in the same columns. */
  readonly columns: readonly Column[];
  readonly noteColumns: readonly Column[];
  /** Kept for frames. */
  readonly row?: Bounds;
  /** Where scale and strokes stand. */
  readonly legend: { readonly x: number; readonly y: number; readonly width: number };
}

const PAPER_SIZES = { letter: [215.9, 279.4], a4: [210, 297], legal: [215.9, 355.6] } as const;

/** Printers leave up to 6 mm white; this is a margin that also looks like one. */
export const PAGE_MARGIN = 12;
/** Room round the ground for the entrance and for signs outside the rail, mm. It may reach into the margin. */
export const DRAWING_EDGE = 6.5;
const FOOTER_HEIGHT = 6;
const GUTTER = 9;
const SPACE = 4;
/** Letter heights that are tried, mm, the best first. */
const FONT_SIZES = [4.9, 4.4, 4.1, 3.8, 3.5, 3.2];
/** The same on a page of words alone: one page is filled before a second is begun. */
const FONT_SIZES_AFTER = [6, 5.4, 4.9, 4.4];
const LEAST_COLUMN = 62;
/** In letter heights. */
const LONGEST_LINE = 40;

/** A sheet of paper as it is held, mm. */
export interface PaperSize {
  readonly width: number;
  readonly height: number;
}

/** The ways in which the paper may be held, portrait first. */
export function paperSizes(options: PageOptions): readonly PaperSize[] {
  const [short, long] = PAPER_SIZES[options.paper];
  const portrait = { width: short, height: long };
  const landscape = { width: long, height: short };
  if (options.orientation === 'portrait') return [portrait];
  return options.orientation === 'landscape' ? [landscape] : [portrait, landscape];
}

/** Paper taken by the ground at a scale, with its edge, mm. */
function drawnSize({ extent }: PageContent, scale: number, turned: boolean): { width: number; height: number } {
  const along = ((extent.maxX - extent.minX) * 1000) / scale + 2 * DRAWING_EDGE;
  const across = ((extent.maxY - extent.minY) * 1000) / scale + 2 * DRAWING_EDGE;
  return turned ? { width: across, height: along } : { width: along, height: across };
}

interface LayoutTrial {
  readonly content: PageContent;
  readonly sheet: PaperSize;
  readonly scale: number;
  readonly turned: boolean;
}

/** By scale and width: a page is tried in many ways that share both. */
const headHeight = memoizeByText((head: SheetHead, text: string): number => {
  const [scale = 0, width = 0] = text.split(' ').map(Number);
  return titleBlock(head, scale, { x: PAGE_MARGIN, y: PAGE_MARGIN, width }).height;
});
const knownLegendHeight = memoizeByText((legend: SheetLegend, text: string): number => {
  const [scale = 0, width = 0] = text.split(' ').map(Number);
  return legendBar(legend, scale, width).height;
});

/** What the head and the foot leave, and the drawing's size. */
function freeArea({ content, sheet, scale, turned }: LayoutTrial) {
  const inner = sheet.width - 2 * PAGE_MARGIN;
  const top = PAGE_MARGIN + headHeight(content.head, `${scale} ${inner}`) + SPACE;
  return { inner, top, bottom: sheet.height - PAGE_MARGIN - FOOTER_HEIGHT, size: drawnSize(content, scale, turned) };
}

/** The height of a row for the frames at a width, with air under it; 0 without frames. Undefined where one is too wide. */
function rowHeight({ content, scale, turned }: LayoutTrial, width: number): number | undefined {
  const sizes = content.frames?.(scale, turned) ?? [];
  if (sizes.length === 0) return 0;
  return sizes.some((each) => each.width > width) ? undefined : rowsOf(sizes, width).height + SPACE;
}

/** The part of the page that is kept; nothing where it has no height. */
function keptRow(x: number, y: number, width: number, height: number): { readonly row?: Bounds } {
  return height === 0 ? {} : { row: { minX: x, maxX: x + width, minY: y, maxY: y + height } };
}

function legendHeight({ content, scale }: LayoutTrial, width: number): number {
  return knownLegendHeight(content.legend, `${scale} ${width}`);
}

function columnsOf(area: { x: number; y: number; width: number; height: number }, count: number): readonly Column[] {
  const width = (area.width - GUTTER * (count - 1)) / count;
  return Array.from({ length: count }, (_, index) => ({
    page: 0,
    x: area.x + index * (width + GUTTER),
    y: area.y,
    width,
    // A little more, so that what was measured to fit does fit in spite of rounding.
    height: area.height + 0.001,
  }));
}

function mostColumns(width: number, least: number): number {
  return Math.max(1, Math.floor((width + GUTTER) / (least + GUTTER)));
}

function columnWidth(inner: number, count: number): number {
  return (inner - GUTTER * (count - 1)) / count;
}

function withWordsBelow(trial: LayoutTrial): PageLayout | undefined {
  const { content, sheet, scale, turned } = trial;
  const { inner, top, bottom, size } = freeArea(trial);
  if (size.width > inner + 2 * DRAWING_EDGE - 1 || top + size.height > bottom) return undefined;
  const x = (sheet.width - size.width) / 2;
  const kept = rowHeight(trial, inner);
  if (kept === undefined) return undefined;
  const row = keptRow(PAGE_MARGIN, top + size.height, inner, kept);
  const legend = { x: PAGE_MARGIN, y: top + size.height + kept + 2, width: inner };
  const noteCount = mostColumns(inner, 85);
  const notes = { count: noteCount, width: columnWidth(inner, noteCount) };
  const noteHeight = balancedHeight(content.notes, notes, SMALLEST_FONT_SIZE);
  const y = legend.y + legendHeight(trial, inner) + SPACE;
  const noteY = bottom - noteHeight;
  const left = noteY - SPACE - y;
  if (left < 0) return undefined;
  const box = { minX: x, maxX: x + size.width, minY: top, maxY: top + size.height };
  const noteColumns = columnsOf({ x: PAGE_MARGIN, y: noteY, width: inner, height: noteHeight }, noteCount);
  const common = {
    scale,
    ...sheet,
    turned,
    words: 'below',
    pageCount: 1,
    drawing: box,
    noteColumns,
    legend,
    ...row,
  } as const;
  const most = mostColumns(inner, LEAST_COLUMN);
  for (const fontSize of FONT_SIZES) {
    for (let count = 1; count <= most; count += 1) {
      const width = columnWidth(inner, count);
      // Longer lines are hard to follow on a wall.
      if (width > LONGEST_LINE * fontSize && count < most) continue;
      const height = balancedHeight(content.steps, { count, width }, fontSize);
      if (height <= left)
        return { ...common, fontSize, columns: columnsOf({ x: PAGE_MARGIN, y, width: inner, height }, count) };
    }
  }
  return undefined;
}

function withWordsBeside(trial: LayoutTrial): PageLayout | undefined {
  const { content, sheet, scale, turned } = trial;
  const { inner, top, bottom, size } = freeArea(trial);
  const width = inner - size.width - GUTTER + DRAWING_EDGE;
  if (width < LEAST_COLUMN || top + size.height > bottom) return undefined;
  const x = PAGE_MARGIN + inner - width;
  const legend = { x, y: top + DRAWING_EDGE - 2, width };
  const noteHeight = balancedHeight(content.notes, { count: 1, width }, SMALLEST_FONT_SIZE);
  const under = rowHeight(trial, size.width - 2 * DRAWING_EDGE);
  const isUnder = under !== undefined && top + size.height + under <= bottom;
  const kept = isUnder ? under : rowHeight(trial, width);
  if (kept === undefined) return undefined;
  const beside = isUnder ? 0 : kept;
  const row = isUnder
    ? keptRow(PAGE_MARGIN, top + size.height, size.width - 2 * DRAWING_EDGE, kept)
    : keptRow(x, legend.y + legendHeight(trial, width) + 2, width, kept);
  const y = legend.y + legendHeight(trial, width) + SPACE + beside;
  const noteY = bottom - noteHeight;
  const column = { page: 0, x, y, width, height: noteY - SPACE - y };
  const fontSize = FONT_SIZES.find((each) => flowedText(content.steps, [column], each).whole);
  if (fontSize === undefined) return undefined;
  // The rail stands on the margin; only what lies outside it reaches into the margin.
  const left = PAGE_MARGIN - DRAWING_EDGE;
  const box = { minX: left, maxX: left + size.width, minY: top, maxY: top + size.height };
  const noteColumns = columnsOf({ x, y: noteY, width, height: noteHeight }, 1);
  const common = { scale, ...sheet, turned, words: 'beside', pageCount: 1 } as const;
  return { ...common, fontSize, drawing: box, columns: [column], noteColumns, legend, ...row };
}

/** Columns of the pages that hold nothing but words. */
function wordColumns(sheet: PaperSize, pages: number): readonly Column[] {
  const inner = sheet.width - 2 * PAGE_MARGIN;
  const count = sheet.width > sheet.height ? 2 : 1;
  const width = (inner - GUTTER * (count - 1)) / count;
  const y = PAGE_MARGIN + 7.5 + SPACE;
  const height = sheet.height - PAGE_MARGIN - FOOTER_HEIGHT - y;
  return Array.from({ length: pages * count }, (_, index) => ({
    page: 1 + Math.floor(index / count),
    x: PAGE_MARGIN + (index % count) * (width + GUTTER),
    y,
    width,
    height,
  }));
}

/** As many pages of columns as the words need. */
export function wholeColumns(words: readonly TextItem[], sheet: PaperSize, fontSize: number): readonly Column[] {
  for (let pages = 1; ; pages *= 2) {
    const columns = wordColumns(sheet, pages);
    const { whole, depths } = flowedText(words, columns, fontSize);
    if (whole) return columns.slice(0, depths.findLastIndex((depth) => depth > 0) + 1);
  }
}

function withWordsAfter(trial: LayoutTrial): PageLayout | undefined {
  const { content, sheet, scale, turned } = trial;
  const { inner, top, bottom, size } = freeArea(trial);
  const kept = rowHeight(trial, inner);
  if (kept === undefined) return undefined;
  const row = keptRow(PAGE_MARGIN, top + size.height, inner, kept);
  const legend = { x: PAGE_MARGIN, y: top + size.height + kept + 2, width: inner };
  if (size.width > inner + 2 * DRAWING_EDGE - 1 || legend.y + legendHeight(trial, inner) > bottom) return undefined;
  const words = [...content.steps, ...content.notes];
  const sizes = content.fontSizes ?? FONT_SIZES_AFTER;
  const fontSize =
    sizes.find((each) => flowedText(words, wordColumns(sheet, 1), each).whole) ?? sizes.at(-1) ?? SMALLEST_FONT_SIZE;
  const columns = wholeColumns(words, sheet, fontSize);
  const x = (sheet.width - size.width) / 2;
  const box = { minX: x, maxX: x + size.width, minY: top, maxY: top + size.height };
  const pageCount = 1 + (columns.at(-1)?.page ?? 0);
  const common = { scale, ...sheet, turned, words: 'after', fontSize, pageCount } as const;
  return { ...common, drawing: box, columns, noteColumns: [], legend, ...row };
}

/** For each way to use the paper, the largest of the scales that fits. */
export function pageLayouts(
  content: PageContent,
  options: PageOptions,
  scales: readonly number[],
): readonly PageLayout[] {
  const ways = [withWordsBelow, withWordsBeside, withWordsAfter];
  return paperSizes(options).flatMap((sheet) =>
    [false, true].flatMap((turned) =>
      ways.flatMap((way) => {
        for (const scale of scales) {
          const plan = way({ content, sheet, scale, turned });
          if (plan !== undefined) return [plan];
        }
        return [];
      }),
    ),
  );
}
