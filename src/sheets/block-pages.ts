/** Pages of rows in one or more columns, under a head; what does not fit goes on on the next page. */
import type { Course } from '../core/course/course.ts';
import type { Mark } from '../core/plane/mark.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { PAGE_MARGIN, type PaperSize } from './page-layout.ts';
import type { RowBlock } from './ruled-table.ts';
import type { Page, Pages } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { continuedTitle, headBlock, wordsMark } from './title-block.ts';

/** A row of the list, and whether it has to stand with the one after it. */
export interface BlockRow extends RowBlock {
  readonly keepsWithNext?: true;
  /** What the foot of the page before calls it, where it begins a page; absent: it is not called. */
  readonly called?: string;
}

/** The rows as they are for columns of a width. */
export interface ColumnRows {
  readonly head: RowBlock;
  readonly rows: readonly BlockRow[];
}

/** What is put on pages. */
export interface BlockList {
  readonly course: Course;
  readonly paper: PaperSize;
  /** Large at the head. */
  readonly name: string;
  readonly facts: readonly (readonly [string, string])[];
  /** Side by side on a page. */
  readonly columnCount: number;
  rowsFor(width: number): ColumnRows;
  /** Stands at the foot of each page. */
  readonly remark: string;
}

const FOOTER = 7;
const SPACE = 4;
const GUTTER = 9;

/** A row in its place; the page is counted from 0. */
interface PlacedRow {
  readonly row: RowBlock;
  readonly page: number;
  readonly x: number;
  readonly y: number;
}

interface Room {
  readonly page: number;
  readonly x: number;
  readonly y: number;
  readonly bottom: number;
}

/** How many rows have to stand together from one on, and how high they are. */
function together(rows: readonly BlockRow[], from: number): number {
  let height = 0;
  for (const row of rows.slice(from)) {
    height += row.height;
    if (row.keepsWithNext !== true) break;
  }
  return height;
}

/** Every row in a room, one after the other, with the head above the first of each. */
function placedRows({ head, rows }: ColumnRows, room: (i: number) => Room) {
  const placed: PlacedRow[] = [];
  /** The first row of each page after the first. */
  const firsts: BlockRow[] = [];
  let index = 0;
  let here = room(0);
  let y = here.y;
  const put = (row: RowBlock): void => {
    placed.push({ row, page: here.page, x: here.x, y });
    y += row.height;
  };
  put(head);
  rows.forEach((row, i) => {
    const isKept = rows[i - 1]?.keepsWithNext === true;
    const wanted = isKept ? row.height : together(rows, i);
    if (y + wanted > here.bottom + 1e-6 && y > here.y + head.height + 1e-6) {
      index += 1;
      const { page } = here;
      here = room(index);
      y = here.y;
      if (here.page > page) firsts.push(row);
      put(head);
    }
    put(row);
  });
  return { placed, firsts };
}

/** The list on as many pages as it needs; nothing is cut. */
export function blockPages(list: BlockList): Pages {
  const { course, paper, name, columnCount, remark } = list;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: paper.width - 2 * PAGE_MARGIN };
  const { show, date } = course.class;
  const head = headBlock({ show, date, name, facts: list.facts }, area);
  const continued = continuedTitle({ name, date }, area);
  const width = (area.width - GUTTER * (columnCount - 1)) / columnCount;
  const room = (i: number): Room => {
    const page = Math.floor(i / columnCount);
    return {
      page,
      x: area.x + (i % columnCount) * (width + GUTTER),
      y: area.y + (page === 0 ? head.height : continued.height) + SPACE,
      bottom: paper.height - PAGE_MARGIN - FOOTER,
    };
  };
  const { placed, firsts } = placedRows(list.rowsFor(width), room);
  const count = 1 + Math.max(...placed.map(({ page }) => page));
  const pageOf = (index: number): Page => {
    const own = placed.filter(({ page }) => page === index);
    const low = paper.height - PAGE_MARGIN;
    const next = firsts[index]?.called;
    const said = next === undefined ? remark : `Next page: ${next}. ${remark}`;
    const foot: Mark<'paper'>[] = [wordsMark(said, area.x, low, { size: SMALLEST_FONT_SIZE })];
    if (count > 1) {
      const style = { size: SMALLEST_FONT_SIZE, align: 'end' } as const;
      foot.push(wordsMark(`Page ${index + 1} of ${count}`, area.x + area.width, low, style));
    }
    return {
      width: paper.width,
      height: paper.height,
      marks: [...(index === 0 ? head : continued).marks, ...own.flatMap(({ row, x, y }) => row.marks(x, y)), ...foot],
      about: `${name}, page ${index + 1} of ${count}.`,
    };
  };
  const pages: Pages['pages'] = [pageOf(0), ...Array.from({ length: count - 1 }, (_, i) => pageOf(i + 1))];
  return { kind: 'pages', title: name, pages, card: { date, author: show }, substitutions: substitutionsOf(pages) };
}
