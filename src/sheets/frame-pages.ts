/** The insets of a drawing on pages of their own, where neither its ground nor a row on its page has room for them. */
import type { Survey } from '../core/survey.ts';
import { BETWEEN, rowsOf } from './frame-rows.ts';
import { insetMarks, insetsInRow, type PlacedInset } from './inset-places.ts';
import { type Inset, insetOf, smallObstacles } from './insets.ts';
import { PAGE_MARGIN, type PaperSize } from './page-layout.ts';
import type { Page } from './sheet.ts';
import { continuedTitle, footMarks, type SheetHead } from './title-block.ts';

/** The drawing whose insets they are, and the sheet to which the pages belong. */
export interface FrameAsk {
  readonly head: SheetHead;
  readonly paper: PaperSize;
  readonly scale: number;
  readonly turned: boolean;
  /** How many pages stand before, and how many follow. */
  readonly preceding: number;
  readonly following: number;
}

export interface FramePage {
  readonly page: Page;
  readonly insets: readonly PlacedInset[];
}

const FOOTER = 6;
const SPACE = 6;

/** As many on each page as have room; one that is higher than a page has a page for itself. */
function chunks(insets: readonly Inset[], { width, height }: PaperSize): readonly (readonly Inset[])[] {
  const pages: Inset[][] = [];
  for (const inset of insets) {
    const last = pages.at(-1);
    if (last !== undefined && rowsOf([...last, inset], width).height + BETWEEN <= height) last.push(inset);
    else pages.push([inset]);
  }
  return pages;
}

/** The small obstacles of the go, each in its frame with its number and scale. */
export function framePages(survey: Survey, ask: FrameAsk): readonly FramePage[] {
  const { head, paper, scale, turned, preceding, following } = ask;
  const { width, height } = paper;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: width - 2 * PAGE_MARGIN };
  const title = continuedTitle(head, area);
  const top = area.y + title.height + SPACE;
  const low = height - PAGE_MARGIN;
  const insets = smallObstacles(survey, scale).map((small) => {
    const large = insetOf(survey, small, { scale, turned, isOverleaf: true });
    // Labels do not grow with their obstacle: what has no room at one scale may have it at the other.
    return large.conflicts === 0 ? large : insetOf(survey, small, { scale, turned });
  });
  const pages = chunks(insets, { width: area.width, height: low - FOOTER - top });
  const count = preceding + pages.length + following;
  return pages.map((own, i): FramePage => {
    const placed = insetsInRow(own, { minX: area.x, maxX: area.x + area.width, minY: top, maxY: low - FOOTER });
    const foot = footMarks('Each frame has its own scale.', `Page ${preceding + i + 1} of ${count}`, {
      ...area,
      y: low,
    });
    const numbers = own.flatMap(({ small }) => small.numbers).join(', ');
    const page: Page = {
      width,
      height,
      marks: [...title.marks, ...placed.flatMap(insetMarks), ...foot],
      about: `${head.name}: the obstacles that are small on the drawing, each drawn larger: ${numbers}.`,
    };
    return { page, insets: placed };
  });
}
