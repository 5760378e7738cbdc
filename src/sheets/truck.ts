/** The truck list: what to load, with boxes to tick, how many there are and what is missing; for a layout or for the day. */
import { dayLayouts, type LoadingList, type TruckLine, truckLoad } from '../core/go/truck-load.ts';
import type { Survey } from '../core/survey.ts';
import { andList } from '../core/text/sentence.ts';
import { type BlockRow, blockPages, type ColumnRows } from './block-pages.ts';
import { SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { cellLines, type ListCell, listRow } from './list-rows.ts';
import { paperSizes } from './page-layout.ts';
import { chosenOf, type PageOptions, type Pages, type Sheet, type SheetOption } from './sheet.ts';
import { displayTitle } from './title-block.ts';

const FOR: SheetOption = {
  id: 'for',
  title: 'For',
  choices: [
    { id: 'layout', title: 'This layout' },
    { id: 'day', title: 'The whole day' },
  ],
};

const FONT_SIZES = [4.6, 4.2, 3.8] as const;
const BOX = 5;
const BOX_WIDTH = 9;
const SPACE = 2.5;
/** mm: a copy in black and white still has it. */
const RULE = 0.25;
const HEAD_RULE = 0.4;
/** Room for what a line is called, mm: layouts that would take of it have no columns of their own. */
const LEAST_NAME = 42;
/** A column of numbers, mm: as wide as the longest word of its head, within these. */
const COUNT_WIDTH = { least: 13, most: 24 } as const;

interface Column {
  readonly title: string;
  text(line: TruckLine): string;
  readonly isBold?: true;
}

/** What is counted: what to load first, then why; with or without what lies in each layout. */
function columnsOf({ layouts }: LoadingList, which: 'each-layout' | 'most'): readonly Column[] {
  const own = layouts.map(
    ({ title }, i): Column => ({ title, text: ({ uses }) => (uses[i] === 0 ? '–' : String(uses[i] ?? '')) }),
  );
  return [
    { title: 'Load', text: ({ most, spare, missing }) => String(most - missing + spare), isBold: true },
    ...(layouts.length > 1 && which === 'each-layout' ? own : []),
    { title: layouts.length > 1 ? 'At most' : 'In the ring', text: ({ most }) => String(most) },
    { title: 'Spare', text: ({ spare }) => (spare === 0 ? '–' : String(spare)) },
    { title: 'There are', text: ({ there }) => (there === null ? '' : String(there)) },
    { title: 'Missing', text: ({ missing }) => (missing === 0 ? '' : String(missing)), isBold: true },
  ];
}

interface Look {
  readonly width: number;
  readonly size: number;
  readonly columns: readonly Column[];
  /** Of the columns of numbers, mm. */
  readonly counts: readonly number[];
}

function countWidth({ title }: Column): number {
  const words = title.split(' ').map((word) => textWidth(word, SMALLEST_FONT_SIZE, 'bold') + 0.1);
  return Math.min(COUNT_WIDTH.most, Math.max(COUNT_WIDTH.least, ...words) + SPACE);
}

function sum(widths: readonly number[]): number {
  return widths.reduce((all, width) => all + width, 0);
}

function numberCells(
  { width, columns, counts }: Look,
  lines: (column: Column, room: number) => ListCell['lines'],
): ListCell[] {
  return columns.map((column, i) => {
    const room = (counts[i] ?? 0) - SPACE;
    const x = width - sum(counts.slice(i)) + SPACE;
    return { x, width: room, column: i + 2, align: 'end', lines: lines(column, room) };
  });
}

function nameRoom({ width, counts }: Look): { x: number; width: number } {
  return { x: BOX_WIDTH + SPACE, width: width - sum(counts) - BOX_WIDTH - 2 * SPACE };
}

function headOf(look: Look): ReturnType<typeof listRow> {
  const size = SMALLEST_FONT_SIZE;
  const cells = numberCells(look, ({ title }, room) => {
    // A long title of a layout is broken where it can be; it stands in full on its own sheets.
    return cellLines(title, room, { size, weight: 'bold' });
  });
  const name: ListCell = {
    ...{ ...nameRoom(look), column: 1, align: 'start' },
    lines: [{ text: 'What', size, weight: 'bold' }],
  };
  return listRow([name, ...cells], {
    width: look.width,
    padding: 1,
    rule: HEAD_RULE,
    reads: { columns: look.columns.length + 2, tag: 'TH' },
  });
}

function tickCell(): ListCell {
  return { x: 0, width: BOX_WIDTH, align: 'middle', lines: [], box: BOX };
}

function lineRow(line: TruckLine, look: Look): BlockRow {
  const { size, width } = look;
  const room = nameRoom(look);
  const name: ListCell = {
    ...{ ...room, column: 1, align: 'start' },
    lines: [
      ...cellLines(line.title, room.width, { size, weight: 'bold' }),
      ...cellLines(line.sizes, room.width, { size: Math.max(SMALLEST_FONT_SIZE, size * 0.8) }),
    ],
  };
  const counts = numberCells(look, ({ text, isBold }) => [
    { text: text(line), size: isBold ? size * 1.15 : size, weight: isBold ? 'bold' : 'regular' },
  ]);
  return listRow([tickCell(), name, ...counts], {
    ...{ width, padding: 1, rule: RULE, least: BOX + 3 },
    reads: { columns: look.columns.length + 2, tag: 'TD' },
  });
}

function toolRow(text: string, { width, size }: Look): BlockRow {
  const room = width - BOX_WIDTH - SPACE;
  const cell: ListCell = { x: BOX_WIDTH + SPACE, width: room, align: 'start', lines: cellLines(text, room, { size }) };
  return listRow([tickCell(), cell], { width, padding: 1, rule: RULE, least: BOX + 2.2 });
}

function wordsRow(text: string, { width }: Look, style: { size: number; weight?: 'bold' }): BlockRow {
  const cell: ListCell = { x: 0, width, align: 'start', lines: cellLines(text, width, style) };
  const row = listRow([cell], { width, padding: 1.4, rule: 0 });
  return style.weight === 'bold' ? { ...row, keepsWithNext: true } : row;
}

function rowsFor(load: LoadingList, width: number, size: number): ColumnRows {
  const look = (['each-layout', 'most'] as const)
    .map((which): Look => {
      const columns = columnsOf(load, which);
      return { width, size, columns, counts: columns.map(countWidth) };
    })
    .find((each) => nameRoom(each).width >= LEAST_NAME);
  if (look === undefined) throw new Error(`truck list: no room for names in ${width} mm`);
  const { things, risers, tools, unused } = load;
  const short = things.filter(({ missing }) => missing > 0);
  const note = Math.max(SMALLEST_FONT_SIZE, size * 0.85);
  const noted = (text: string): BlockRow => wordsRow(text, look, { size: note });
  const lacking = things.filter(({ spare, spareWanted, missing }) => spare < spareWanted && missing === 0);
  return {
    head: headOf(look),
    rows: [
      ...(things.length === 0 ? [wordsRow('Nothing lies in this layout.', look, { size: 5 })] : []),
      ...[...things, ...risers].map((line) => lineRow(line, look)),
      wordsRow('Tools', look, { size: size * 1.1, weight: 'bold' }),
      ...tools.map((text) => toolRow(text, look)),
      ...(short.length > 0
        ? [
            noted(
              `Missing: ${andList(short.map(({ title, missing }) => `${missing} of ${title}`))}. Find them, or leave something out.`,
            ),
          ]
        : []),
      ...(lacking.length > 0 ? [noted(`Too few spares of: ${andList(lacking.map(({ title }) => title))}.`)] : []),
      ...(unused.length > 0 ? [noted(`Not needed: ${andList(unused)}.`)] : []),
      noted('Spares (one for ten in use) and tools are common practice, without a source.'),
    ],
  };
}

function draw({ course }: Survey, options: PageOptions): Pages {
  const [paper] = paperSizes(options);
  if (paper === undefined) throw new Error(`truck list: no paper ${options.paper}`);
  const isDay = chosenOf(FOR, options) === 'day' && (course.day?.classes.length ?? 0) > 0;
  const load = truckLoad(course, isDay ? dayLayouts(course) : [course.current]);
  const titles = andList(load.layouts.map(({ title }) => title));
  const pieces = [...load.things, ...load.risers].reduce(
    (sum, { most, spare, missing }) => sum + most + spare - missing,
    0,
  );
  const pagesAt = (size: number): Pages =>
    blockPages({
      ...{ course, paper, columnCount: 1 },
      name: isDay ? `Truck list for the day: ${course.title}` : `Truck list: ${displayTitle(course)}`,
      facts: [
        ['For', isDay ? `${titles}; what lies in one is used again in the next` : titles],
        ['To load', `${pieces} things, and the tools`],
      ],
      rowsFor: (width) => rowsFor(load, width, size),
      remark: 'For the crew. Tick what is on the truck.',
    });
  const [first, ...smaller] = FONT_SIZES;
  return smaller.reduce((best, size) => {
    const tried = best.pages.length === 1 ? best : pagesAt(size);
    return tried.pages.length < best.pages.length ? tried : best;
  }, pagesAt(first));
}

export const truckList: Sheet = {
  id: 'truck',
  title: 'Truck list',
  perLayout: true,
  options: [FOR],
  wholeDay: { [FOR.id]: 'day' },
  draw,
};
