/** Pages of rows in one or more columns, under a head; what does not fit goes on on the next page. */
import type { Course } from '../core/course/course.ts';
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { SMALLEST_FONT_SIZE, textWidth, truncatedText } from './lettering.ts';
import { PAGE_MARGIN, type PaperSize } from './page-layout.ts';
import type { RowBlock } from './ruled-table.ts';
import type { Page, Pages } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { continuedTitle, footMarks, headBlock } from './title-block.ts';

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
  /** The head again: who is read to has heard it. */
  readonly isRepeated: boolean;
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
    placed.push({ row, page: here.page, x: here.x, y, isRepeated: row === head && placed.length > 0 });
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
  const table: Role = { tag: 'Table' };
  const marksOf = ({ row, x, y, isRepeated }: PlacedRow): readonly Mark<'paper'>[] => {
    const marks = row.marks(x, y, table);
    return isRepeated ? marks.map((mark) => ({ ...mark, role: ARTIFACT })) : marks;
  };
  const count = 1 + Math.max(...placed.map(({ page }) => page));
  const pageOf = (index: number): Page => {
    const own = placed.filter(({ page }) => page === index);
    const low = paper.height - PAGE_MARGIN;
    const next = firsts[index]?.called;
    const room = area.width - textWidth(`Page ${count} of ${count}  `, SMALLEST_FONT_SIZE);
    const left = next === undefined ? remark : `${remark} Next page: ${next}.`;
    const said = truncatedText(left, room, { size: SMALLEST_FONT_SIZE });
    const foot = footMarks(said, count === 1 ? '' : `Page ${index + 1} of ${count}`, { ...area, y: low });
    return {
      width: paper.width,
      height: paper.height,
      marks: [...(index === 0 ? head : continued).marks, ...own.flatMap(marksOf), ...foot],
      about: `${name}, page ${index + 1} of ${count}.`,
    };
  };
  const pages: Pages['pages'] = [pageOf(0), ...Array.from({ length: count - 1 }, (_, i) => pageOf(i + 1))];
  return { kind: 'pages', title: name, pages, card: { date, author: show }, substitutions: substitutionsOf(pages) };
}
