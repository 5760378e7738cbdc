/** How a page is divided between drawing and words: words below, words beside, or words on the next page. */
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import type { Survey } from '../core/survey.ts';
import { drawing } from './drawing.ts';
import { balancedHeight, type Column, flowed, type Item } from './flow.ts';
import type { Frame } from './frame.ts';
import { strip } from './legend.ts';
import type { Ask, Page } from './sheet.ts';
import { foot, smallTitle, titleBlock } from './title-block.ts';
import { inksOf } from './travel.ts';

export interface Content {
  readonly survey: Survey;
  /** What has to be on the drawing, metres. */
  readonly extent: Bounds;
  readonly items: readonly Item[];
}

export interface Arrangement {
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  readonly turned: boolean;
  readonly words: 'below' | 'beside' | 'after';
  /** Letter height of the words, mm. */
  readonly letters: number;
  readonly pageCount: number;
  /** The room of the drawing with its edge. */
  readonly drawing: Bounds;
  readonly columns: readonly Column[];
}

const PAPERS = { letter: [215.9, 279.4], a4: [210, 297] } as const;

/** Printers leave up to 6 mm white; this is a margin that also looks like one. */
const MARGIN = 12;
/** Room round the ground for the entrance and for signs outside the rail, mm. */
const EDGE = 6.5;
const FOOT = 7;
const GUTTER = 9;
const SPACE = 4;
/** Letter heights that are tried, mm, the best first. */
const LETTERS = [4.4, 4.1, 3.8, 3.5, 3.2];
const LEAST_COLUMN = 62;

interface Sheet {
  readonly width: number;
  readonly height: number;
}

function sheetsFor(ask: Ask): readonly Sheet[] {
  const [short, long] = PAPERS[ask.paper];
  const portrait = { width: short, height: long };
  const landscape = { width: long, height: short };
  if (ask.orientation === 'portrait') return [portrait];
  return ask.orientation === 'landscape' ? [landscape] : [portrait, landscape];
}

/** Paper taken by the ground at a scale, with its edge, mm. */
function drawnSize({ extent }: Content, scale: number, turned: boolean): { width: number; height: number } {
  const along = ((extent.maxX - extent.minX) * 1000) / scale + 2 * EDGE;
  const across = ((extent.maxY - extent.minY) * 1000) / scale + 2 * EDGE;
  return turned ? { width: across, height: along } : { width: along, height: across };
}

interface Tried {
  readonly content: Content;
  readonly sheet: Sheet;
  readonly scale: number;
  readonly turned: boolean;
}

/** What the head, the strip and the foot leave, and the drawing's size. */
function roomFor({ content, sheet, scale, turned }: Tried, stripWidth: number) {
  const { course } = content.survey;
  const inner = sheet.width - 2 * MARGIN;
  const head = titleBlock(course, scale, { x: MARGIN, y: MARGIN, width: inner });
  const legend = strip(inksOf(content.survey.line.elements), { scale, unit: course.unit }, stripWidth);
  const top = MARGIN + head.height + SPACE;
  const bottom = sheet.height - MARGIN - FOOT;
  return { inner, top, bottom, legend, size: drawnSize(content, scale, turned) };
}

function withWordsBelow(tried: Tried): Arrangement | undefined {
  const { content, sheet, scale, turned } = tried;
  const { inner, top, bottom, legend, size } = roomFor(tried, sheet.width - 2 * MARGIN);
  const left = bottom - top - size.height - legend.height - 2 * SPACE;
  if (size.width > inner || left <= 0) return undefined;
  const count = Math.max(1, Math.floor((inner + GUTTER) / (LEAST_COLUMN + GUTTER)));
  for (const letters of LETTERS) {
    for (let each = 1; each <= count; each += 1) {
      const width = (inner - GUTTER * (each - 1)) / each;
      // Lines of more than 75 letters are hard to read aloud from a wall.
      if (width > 38 * letters && each < count) continue;
      const height = balancedHeight(content.items, { count: each, width }, letters);
      if (height > left) continue;
      const y = top + size.height + legend.height + 2 * SPACE;
      const columns = Array.from({ length: each }, (_, index) => ({
        page: 0,
        x: MARGIN + index * (width + GUTTER),
        y,
        width,
        height: height + 1e-6,
      }));
      const x = MARGIN + (inner - size.width) / 2;
      const box = { minX: x, maxX: x + size.width, minY: top, maxY: top + size.height };
      return { scale, ...sheet, turned, words: 'below', letters, pageCount: 1, drawing: box, columns };
    }
  }
  return undefined;
}

function withWordsBeside(tried: Tried): Arrangement | undefined {
  const { content, sheet, scale, turned } = tried;
  const narrow = drawnSize(content, scale, turned).width;
  const { inner, top, bottom, legend, size } = roomFor(tried, narrow);
  const width = inner - size.width - GUTTER;
  if (width < LEAST_COLUMN || size.height + legend.height + SPACE > bottom - top) return undefined;
  const column = { page: 0, x: MARGIN + size.width + GUTTER, y: top + EDGE, width, height: bottom - top - EDGE };
  const letters = LETTERS.find((each) => flowed(content.items, [column], each).whole);
  if (letters === undefined) return undefined;
  const box = { minX: MARGIN, maxX: MARGIN + size.width, minY: top, maxY: top + size.height };
  return { scale, ...sheet, turned, words: 'beside', letters, pageCount: 1, drawing: box, columns: [column] };
}

/** Columns of the pages that hold nothing but words. */
function wordColumns(sheet: Sheet, pages: number): readonly Column[] {
  const inner = sheet.width - 2 * MARGIN;
  const count = sheet.width > sheet.height ? 2 : 1;
  const width = (inner - GUTTER * (count - 1)) / count;
  const y = MARGIN + 7.5 + SPACE;
  const height = sheet.height - MARGIN - FOOT - y;
  return Array.from({ length: pages * count }, (_, index) => ({
    page: 1 + Math.floor(index / count),
    x: MARGIN + (index % count) * (width + GUTTER),
    y,
    width,
    height,
  }));
}

const MOST_PAGES = 20;

function withWordsAfter(tried: Tried): Arrangement | undefined {
  const { content, sheet, scale, turned } = tried;
  const { inner, top, bottom, legend, size } = roomFor(tried, sheet.width - 2 * MARGIN);
  if (size.width > inner || size.height + legend.height + SPACE > bottom - top) return undefined;
  const [letters = 4.4] = LETTERS;
  const all = wordColumns(sheet, MOST_PAGES);
  const set = flowed(content.items, all, letters);
  const used = set.depths.findLastIndex((depth) => depth > 0);
  const columns = all.slice(0, used + 1);
  const x = MARGIN + (inner - size.width) / 2;
  const box = { minX: x, maxX: x + size.width, minY: top, maxY: top + size.height };
  const pageCount = 1 + (columns.at(-1)?.page ?? 0);
  return { scale, ...sheet, turned, words: 'after', letters, pageCount, drawing: box, columns };
}

/** For each way to use the paper, the largest of the scales that fits. */
export function arrangements(content: Content, ask: Ask, scales: readonly number[]): readonly Arrangement[] {
  const ways = [withWordsBelow, withWordsBeside, withWordsAfter];
  return sheetsFor(ask).flatMap((sheet) =>
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

/** The frame that puts the extent into the drawing's room, its edge left free. */
function frameFor({ extent }: Content, plan: Arrangement): Frame {
  const k = 1000 / plan.scale;
  const { minX, maxX, maxY } = plan.drawing;
  return plan.turned
    ? { scale: plan.scale, turned: true, x: maxX - EDGE + extent.minY * k, y: maxY - EDGE + extent.minX * k }
    : { scale: plan.scale, turned: false, x: minX + EDGE - extent.minX * k, y: maxY - EDGE + extent.minY * k };
}

function about(content: Content, page: number): string {
  const { course, layout } = content.survey;
  const name = course.class.title === '' ? course.title : course.class.title;
  const count = layout.ride.legs.length;
  if (page > 0) return `${name}: the pattern in words, page ${page + 1}.`;
  return `${name}: drawing of the course with ${count} numbered ${count === 1 ? 'obstacle' : 'obstacles'}, and the pattern in words.`;
}

/** The pages of an arrangement, and the frame of its drawing. */
export function arranged(content: Content, plan: Arrangement): { pages: readonly [Page, ...Page[]]; frame: Frame } {
  const { course } = content.survey;
  const frame = frameFor(content, plan);
  const inner = plan.width - 2 * MARGIN;
  const area = { x: MARGIN, y: MARGIN, width: inner };
  const drawn = drawing(content.survey, frame, plan.drawing);
  const beside = plan.words === 'beside';
  const legend = strip(
    inksOf(content.survey.line.elements),
    { scale: plan.scale, unit: course.unit },
    beside ? plan.drawing.maxX - MARGIN : inner,
  );
  const set = flowed(content.items, plan.columns, plan.letters);
  const pageOf = (index: number, own: readonly Mark<'paper'>[]): Page => {
    const footArea = { ...area, y: plan.height - MARGIN };
    const words = set.marks.flatMap(({ page, mark }) => (page === index ? [mark] : []));
    const marks = [...own, ...words, ...foot(plan.scale, { number: index + 1, count: plan.pageCount }, footArea)];
    return { width: plan.width, height: plan.height, marks, about: about(content, index) };
  };
  const head = titleBlock(course, plan.scale, area).marks;
  const first = pageOf(0, [...head, ...drawn, ...legend.marks(MARGIN, plan.drawing.maxY + SPACE)]);
  const more = Array.from({ length: plan.pageCount - 1 }, (_, index) =>
    pageOf(index + 1, smallTitle(course, area).marks),
  );
  return { pages: [first, ...more], frame };
}
