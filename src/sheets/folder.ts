/** Sheets bound as one: what is in it with its pages, then all pages, numbered through at the lower right. */
import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { SMALLEST_FONT_SIZE, textWidth, wrappedLines } from './lettering.ts';
import { PAGE_MARGIN, paperSizes } from './page-layout.ts';
import type { Chapter, Page, Pages, Paper } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { continuedTitle, footMarks, headBlock, type SheetHead, wordsMark } from './title-block.ts';

/** What stands in a folder under one title: a sheet, or further chapters. */
export interface BoundChapter {
  readonly title: string;
  readonly content: Pages | readonly [BoundChapter, ...BoundChapter[]];
}

/** What stands over the contents. */
export interface FolderCover {
  readonly head: SheetHead;
  readonly paper: Paper;
  /** For the file's own metadata. */
  readonly title: string;
}

/** A line of the contents; `page` counts from 0 after the contents. */
interface ContentsLine {
  readonly title: string;
  readonly depth: number;
  readonly page: number;
  readonly hasChapters: boolean;
}

const HEADING = 5.4;
const SIZE = 4.2;
const LEADING = 1.35;
/** Between two lines of contents, and over one that has chapters, mm. */
const SPACE = 1.6;
const SPACE_OVER_CHAPTERS = 3;
const INDENT = 7;
const NUMBER_WIDTH = 14;
const FOOTER = 6;
/** The folder's numbers stand in the margin, below the feet of the sheets, mm from the lower edge. */
const NUMBER_HEIGHT = 6.5;
const REMARK = 'Sheets to scale stay so when they are printed at 100 %.';

function isSheet(content: BoundChapter['content']): content is Pages {
  return 'kind' in content;
}

function pageCount({ content }: BoundChapter): number {
  return isSheet(content) ? content.pages.length : content.reduce((sum, chapter) => sum + pageCount(chapter), 0);
}

function pagesOf({ content }: BoundChapter): readonly Page[] {
  return isSheet(content) ? content.pages : content.flatMap(pagesOf);
}

function contentsLines(chapters: readonly BoundChapter[], from = 0, depth = 0): readonly ContentsLine[] {
  let page = from;
  return chapters.flatMap((chapter) => {
    const own: ContentsLine = { title: chapter.title, depth, page, hasChapters: !isSheet(chapter.content) };
    const below = isSheet(chapter.content) ? [] : contentsLines(chapter.content, page, depth + 1);
    page += pageCount(chapter);
    return [own, ...below];
  });
}

function chaptersOf(chapters: readonly BoundChapter[], from: number): readonly Chapter[] {
  let page = from;
  return chapters.map((chapter) => {
    const { title, content } = chapter;
    const own = { title, page };
    const whole = isSheet(content) ? own : { ...own, chapters: chaptersOf(content, page) };
    page += pageCount(chapter);
    return whole;
  });
}

/** A line of contents before it has its place: its words in lines, and how high they are, mm. */
interface ContentsBlock {
  readonly line: ContentsLine;
  readonly words: readonly string[];
  readonly height: number;
}

function contentsBlock(line: ContentsLine, width: number): ContentsBlock {
  const weight = line.hasChapters ? 'bold' : 'regular';
  const words = wrappedLines(line.title, width - line.depth * INDENT - NUMBER_WIDTH, { size: SIZE, weight });
  const above = line.hasChapters ? SPACE_OVER_CHAPTERS : SPACE;
  return { line, words, height: above + words.length * SIZE * LEADING };
}

/** How many blocks each page takes, the first page having less room for its head. */
function filledPages(blocks: readonly ContentsBlock[], rooms: readonly [number, number]): readonly ContentsBlock[][] {
  const pages: ContentsBlock[][] = [[]];
  let used = 0;
  for (const block of blocks) {
    const room = pages.length === 1 ? rooms[0] : rooms[1];
    const isFirst = pages.at(-1)?.length === 0;
    if (!isFirst && used + block.height > room) {
      pages.push([]);
      used = 0;
    }
    pages.at(-1)?.push(block);
    used += block.height;
  }
  return pages;
}

interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

/** The words of a block, dots, and the page that it leads to; `before` pages of contents come first. */
function blockMarks({ line, words, height }: ContentsBlock, { x, y, width }: Area, before: number, toc: Role) {
  const role: Role = { tag: 'TOCI', within: toc, page: line.page + before };
  const weight = line.hasChapters ? 'bold' : 'regular';
  const left = x + line.depth * INDENT;
  const top = y + height - words.length * SIZE * LEADING;
  const baseline = (i: number): number => top + (i + 0.8) * SIZE * LEADING;
  const last = baseline(words.length - 1);
  const number = String(line.page + before + 1);
  const from = left + textWidth(words.at(-1) ?? '', SIZE, weight) + 2;
  const to = x + width - textWidth(number, SIZE, weight) - 2;
  const dots: Mark<'paper'> = {
    ...{ kind: 'line', ink: 'words', width: 0.25, dash: [0.25, 1.5], role: ARTIFACT },
    points: [
      { x: from, y: last },
      { x: Math.max(from, to), y: last },
    ],
  };
  return [
    ...words.map((text, i) => wordsMark(text, left, baseline(i), { size: SIZE, weight, role })),
    wordsMark(number, x + width, last, { size: SIZE, weight, align: 'end', role }),
    ...(to > from ? [dots] : []),
  ];
}

function contentsPages({ head, paper }: FolderCover, chapters: readonly BoundChapter[]): readonly Page[] {
  const [sheet] = paperSizes({ paper, orientation: 'portrait' });
  if (sheet === undefined) throw new Error(`folderPages: no paper ${paper}`);
  const { width, height } = sheet;
  const area = { x: PAGE_MARGIN, y: PAGE_MARGIN, width: width - 2 * PAGE_MARGIN };
  const block = headBlock(head, area);
  const again = continuedTitle(head, area);
  const top = block.height + HEADING * 2;
  const bottom = height - 2 * PAGE_MARGIN - FOOTER;
  const blocks = contentsLines(chapters).map((line) => contentsBlock(line, area.width));
  const filled = filledPages(blocks, [bottom - top, bottom - again.height]);
  const toc: Role = { tag: 'TOC' };
  return filled.map((own, i): Page => {
    let y = area.y + (i === 0 ? top : again.height);
    const lines = own.flatMap((each) => {
      const marks = blockMarks(each, { ...area, y }, filled.length, toc);
      y += each.height;
      return marks;
    });
    const heading = { size: HEADING, weight: 'bold', role: { tag: 'H2' } } as const;
    const over =
      i === 0
        ? [...block.marks, wordsMark('Contents', area.x, area.y + block.height + HEADING * 1.5, heading)]
        : again.marks;
    const marks = [...over, ...lines, ...footMarks(REMARK, '', { ...area, y: height - PAGE_MARGIN })];
    return { width, height, marks, about: `${head.name}: contents, page ${i + 1} of ${filled.length}.` };
  });
}

function withNumber(page: Page, number: number, count: number): Page {
  const style = { size: SMALLEST_FONT_SIZE, align: 'end', role: ARTIFACT } as const;
  const text = `${number} of ${count} in this folder`;
  const mark = wordsMark(text, page.width - PAGE_MARGIN, page.height - NUMBER_HEIGHT, style);
  return { ...page, marks: [...page.marks, mark] };
}

/** The chapters bound as one. Every sheet keeps its own feet, because its words refer to its own pages. */
export function folderPages(cover: FolderCover, chapters: readonly [BoundChapter, ...BoundChapter[]]): Pages {
  const contents = contentsPages(cover, chapters);
  const all = [...contents, ...chapters.flatMap(pagesOf)];
  const [first, ...rest] = all.map((page, i) => withNumber(page, i + 1, all.length));
  if (first === undefined) throw new Error('folderPages: a folder has its contents');
  const { date, show } = cover.head;
  return {
    kind: 'pages',
    title: cover.title,
    pages: [first, ...rest],
    card: { date, author: show },
    substitutions: substitutionsOf(all),
    chapters: [{ title: 'Contents', page: 0 }, ...chaptersOf(chapters, contents.length)],
  };
}
