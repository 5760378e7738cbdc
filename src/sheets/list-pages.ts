/** Pages of words alone: a sheet that is a list, or the list after a drawing. */
import type { Course } from '../core/course/course.ts';
import { flowedText, type TextItem } from './flow.ts';
import { PAGE_MARGIN, type PaperSize, wholeColumns } from './page-layout.ts';
import type { Page } from './sheet.ts';
import { continuedTitle, displayTitle, footMarks } from './title-block.ts';

/** What stands round the words of a list. */
export interface ListHead {
  readonly course: Course;
  readonly paper: PaperSize;
  /** Letter height, mm. */
  readonly fontSize: number;
  /** Stands at the foot with the number of the page, such as `Findings`. */
  readonly name: string;
  /** What the list is about, for a screen reader; follows the course's title and a colon. */
  readonly about: string;
  /** Stands at the foot of each page. */
  readonly remark: string;
}

/** The items in as few pages as they need, in columns; no page when there are no items. */
export function listPages(items: readonly TextItem[], head: ListHead): readonly Page[] {
  const { course, fontSize, name, about, remark } = head;
  const { width, height } = head.paper;
  const columns = wholeColumns(items, { width, height }, fontSize);
  const { marks } = flowedText(items, columns, fontSize);
  const count = columns.at(-1)?.page ?? 0;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: width - 2 * PAGE_MARGIN };
  const low = height - PAGE_MARGIN;
  return Array.from({ length: count }, (_, i): Page => {
    const here = marks.flatMap(({ page, mark }) => (page === i + 1 ? [mark] : []));
    const numbered = count === 1 ? name : `${name}, page ${i + 1} of ${count}`;
    return {
      width,
      height,
      marks: [
        ...continuedTitle({ name: displayTitle(course), date: course.class.date }, area).marks,
        ...here,
        ...footMarks(remark, numbered, { ...area, y: low }),
      ],
      about: `${displayTitle(course)}: ${about}, page ${i + 1} of ${count}.`,
    };
  });
}
