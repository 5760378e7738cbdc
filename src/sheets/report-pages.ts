/** Pages of a report: a head, a table that may run over pages, then paragraphs below it. */
import type { Course } from '../core/course/course.ts';
import { type Column, flowedText, type TextItem } from './flow.ts';
import { PAGE_MARGIN, paperSizes } from './page-layout.ts';
import { headRow, setTable, type TableColumn, type TableRoom, type TableRow, tableRows } from './ruled-table.ts';
import type { Page, PageOptions, Pages, Paper } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { continuedTitle, footMarks, headBlock, type MarkBlock, wholeNames } from './title-block.ts';

/** What a report is made of. */
export interface Report {
  readonly course: Course;
  readonly paper: Paper;
  readonly orientation: Exclude<PageOptions['orientation'], 'fit'>;
  /** Large at the head: "Three layouts compared". */
  readonly name: string;
  readonly facts: readonly (readonly [string, string])[];
  /** A drawing under the head, as wide as the page allows. */
  readonly drawing?: (x: number, y: number, width: number) => MarkBlock;
  /** Widths are shares of the page's. */
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  readonly items: readonly TextItem[];
  /** Stands at the foot of each page. */
  readonly remark: string;
  /** Letter heights of table and paragraphs, mm, the best first: a smaller one is taken where it saves a page. */
  readonly fontSizes: readonly [number, ...number[]];
}

const FOOTER = 6;
const SPACE = 4;
const GUTTER = 9;
/** Less room than this below a table is left empty, mm. */
const LEAST_ROOM = 18;

function scaledColumns(columns: readonly TableColumn[], width: number): readonly TableColumn[] {
  const shares = columns.reduce((sum, column) => sum + column.width, 0);
  return columns.map((column) => ({ ...column, width: (column.width / shares) * width }));
}

/** Columns for paragraphs: what a table leaves of its page, then whole pages. Side by side where the page is wide. */
function textColumns(rest: TableRoom, whole: (page: number) => TableRoom, width: number): readonly Column[] {
  const count = width > 200 ? 2 : 1;
  const each = (width - GUTTER * (count - 1)) / count;
  const split = ({ page, x, y, height }: TableRoom): readonly Column[] =>
    Array.from({ length: count }, (_, i) => ({ page, x: x + i * (each + GUTTER), y, width: each, height }));
  const below = { ...rest, y: rest.y + SPACE, height: rest.height - SPACE };
  const first = below.height < LEAST_ROOM ? [] : split(below);
  return [...first, ...Array.from({ length: 200 }, (_, i) => split(whole(rest.page + i + 1))).flat()];
}

function pagesAt(report: Report, fontSize: number): Pages {
  const { course, name, remark } = report;
  const [sheet] = paperSizes({ paper: report.paper, orientation: report.orientation });
  if (sheet === undefined) throw new Error(`reportPages: no paper ${report.paper}`);
  const { width, height } = sheet;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: width - 2 * PAGE_MARGIN };
  const bottom = height - PAGE_MARGIN - FOOTER;
  const { show, date } = course.class;
  const over = { show, date, name, facts: report.facts };
  const head = headBlock(over, area);
  const notes = wholeNames(over).map((text): TextItem => ({ kind: 'paragraph', text, hang: '–' }));
  const drawing = report.drawing?.(area.x, area.y + head.height + SPACE, area.width);
  const top = area.y + head.height + SPACE + (drawing === undefined ? 0 : drawing.height + SPACE);
  const continued = continuedTitle({ name, date }, area);
  const whole = (page: number): TableRoom => {
    const y = page === 0 ? top : area.y + continued.height + SPACE;
    return { page, x: area.x, y, height: bottom - y };
  };
  const columns = scaledColumns(report.columns, area.width);
  const table = setTable(headRow(columns, fontSize), tableRows(columns, report.rows, fontSize), whole);
  const text = flowedText([...report.items, ...notes], textColumns(table.rest, whole, area.width), fontSize);
  const set = [...table.marks, ...text.marks];
  const count = 1 + Math.max(...set.map(({ page }) => page));
  const pageOf = (index: number): Page => {
    const own = index === 0 ? [...head.marks, ...(drawing?.marks ?? [])] : continued.marks;
    const here = set.flatMap(({ page, mark }) => (page === index ? [mark] : []));
    const low = height - PAGE_MARGIN;
    const numbered = count === 1 ? '' : `Page ${index + 1} of ${count}`;
    const foot = footMarks(remark, numbered, { ...area, y: low });
    return { width, height, marks: [...own, ...here, ...foot], about: `${name}, page ${index + 1} of ${count}.` };
  };
  const pages: Pages['pages'] = [pageOf(0), ...Array.from({ length: count - 1 }, (_, i) => pageOf(i + 1))];
  return {
    kind: 'pages',
    title: name,
    pages,
    card: { date, author: show },
    substitutions: substitutionsOf(pages),
  };
}

/** The report as pages of its paper. Nothing is cut: it takes the pages that it needs, at the height that needs fewest. */
export function reportPages(report: Report): Pages {
  const [first, ...smaller] = report.fontSizes;
  return smaller.reduce(
    (best, fontSize) => {
      const tried = best.pages.length === 1 ? best : pagesAt(report, fontSize);
      return tried.pages.length < best.pages.length ? tried : best;
    },
    pagesAt(report, first),
  );
}
