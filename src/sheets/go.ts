/** The order of go for a wall: who goes when, in letters as large as the list allows, with drags and breaks. */
import { drawWords } from '../core/go/draw-words.ts';
import { GO_CAUTION, type GoRow, goTimesOf, goTimeWords } from '../core/go/go-times.ts';
import type { Survey } from '../core/survey.ts';
import { type BlockRow, blockPages, type ColumnRows } from './block-pages.ts';
import { columnTexts, goFacts, pauseWords, scratchedWords } from './go-facts.ts';
import { SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { cellLines, type ListCell, listRow } from './list-rows.ts';
import { paperSizes } from './page-layout.ts';
import { chosenOf, type PageOptions, type Pages, type Sheet, type SheetOption } from './sheet.ts';
import { displayTitle } from './title-block.ts';

const TIMES: SheetOption = {
  id: 'times',
  title: 'Times',
  choices: [
    { id: 'about', title: 'About when each goes' },
    { id: 'none', title: 'Order alone' },
  ],
};

/** Columns and letter heights, mm, the best first: as large as fits on one page, then two columns, then more pages. */
const SETTINGS: readonly { readonly columns: 1 | 2; readonly size: number }[] = [
  ...[7.6, 7, 6.2, 5.6, 5].map((size) => ({ columns: 1, size }) as const),
  ...[5.4, 5, 4.6, 4.2].map((size) => ({ columns: 2, size }) as const),
];
/** The same for a list that takes several pages: a smaller one where it saves a page. */
const LONG_SETTINGS = [4.2, 4, 3.8].map((size) => ({ columns: 2, size }) as const);
const SPACE = 3;
/** mm: a copy in black and white still has it. */
const RULE = 0.25;
const HEAD_RULE = 0.4;
/** For who is read to: turn, number, rider, horse, when. */
const HEADS = { columns: 5, tag: 'TH' } as const;
const CELLS = { columns: 5, tag: 'TD' } as const;
const WHEN = 4;

/** Where the cells of a row stand. The name takes what the others leave. */
interface Columns {
  readonly turn: { readonly x: number; readonly width: number };
  readonly number: { readonly x: number; readonly width: number };
  readonly name: { readonly x: number; readonly width: number };
  readonly when: { readonly x: number; readonly width: number };
}

/** Of horses, times and what is between goes. */
function lesser(size: number): number {
  return Math.max(SMALLEST_FONT_SIZE, size * 0.84);
}

/** Of a row, mm. */
function leastHeight(size: number): number {
  return size * 1.65;
}

/** Of turns, heads and notes. */
function smallSize(size: number): number {
  return Math.max(SMALLEST_FONT_SIZE, size * 0.62);
}

function columnsOf(of: Survey, width: number, { size, hasTimes }: Look): Columns {
  const { numbers, times } = columnTexts(of);
  const widest = (texts: readonly string[], at: number): number =>
    Math.max(0, ...texts.map((text) => textWidth(text, at, 'bold')));
  const turn = widest([String(times.length)], smallSize(size));
  // Room to write a number where none is known.
  const number = Math.min(
    width / 3,
    Math.max(widest(numbers, size * 1.1), textWidth('No.', smallSize(size), 'bold'), 10),
  );
  const when = hasTimes ? widest([...times, 'About'], lesser(size)) : 0;
  const x = turn + SPACE;
  const nameX = x + number + SPACE;
  return {
    turn: { x: 0, width: turn },
    number: { x, width: number },
    name: { x: nameX, width: width - nameX - (hasTimes ? when + SPACE : 0) },
    when: { x: width - when, width: when },
  };
}

interface Look {
  readonly size: number;
  readonly hasTimes: boolean;
  /** Rider and horse on one line where they fit. */
  readonly isWide: boolean;
}

function nameCells(row: Extract<GoRow, { kind: 'go' }>, { name }: Columns, { size, isWide }: Look): ListCell[] {
  const { rider, horse } = row.entry;
  const rest = lesser(size);
  const isSide = isWide && rider !== '' && horse !== '';
  const half = (name.width - SPACE) / 2;
  if (isSide) {
    return [
      { ...name, width: half, align: 'start', lines: cellLines(rider, half, { size, weight: 'bold' }) },
      { x: name.x + half + SPACE, width: half, align: 'start', lines: cellLines(horse, half, { size: rest }) },
    ];
  }
  const lines = [
    ...cellLines(rider, name.width, { size, weight: 'bold' }),
    ...cellLines(horse, name.width, { size: rest }),
  ];
  return [{ ...name, align: 'start', lines, column: 2, span: 2 }];
}

function rowOf(of: Survey, row: GoRow, columns: Columns, look: Look, width: number): BlockRow {
  const { size, hasTimes } = look;
  const small = smallSize(size);
  const padding = size * 0.2;
  const when: readonly ListCell[] = hasTimes
    ? [
        {
          ...columns.when,
          column: WHEN,
          align: 'end',
          lines: [{ text: goTimeWords(goTimesOf(of), row.from), size: lesser(size) }],
        },
      ]
    : [];
  if (row.kind !== 'go') {
    const said = columns.name.x + columns.name.width - columns.number.x;
    const lines = cellLines(pauseWords(row), said, { size: lesser(size) });
    const pause: ListCell = { x: columns.number.x, width: said, align: 'start', lines, column: 1, span: 3 };
    const block = listRow([pause, ...when], { width, padding, rule: RULE, reads: CELLS });
    return row.kind === 'drag' ? { ...block, keepsWithNext: true } : block;
  }
  const cells: readonly ListCell[] = [
    { ...columns.turn, align: 'end', lines: [{ text: String(row.turn), size: small }] },
    { ...columns.number, align: 'end', lines: [{ text: row.entry.number, size: size * 1.1, weight: 'bold' }] },
    ...nameCells(row, columns, look),
    ...when,
  ];
  return listRow(cells, { width, padding, rule: RULE, least: leastHeight(size), reads: CELLS });
}

function noteRow(text: string, width: number, size: number): BlockRow {
  const cell: ListCell = { x: 0, width, align: 'start', lines: cellLines(text, width, { size }) };
  return listRow([cell], { width, padding: 1.2, rule: 0 });
}

function rowsFor(of: Survey, width: number, look: Look): ColumnRows {
  const times = goTimesOf(of);
  const columns = columnsOf(of, width, look);
  const small = smallSize(look.size);
  const head = (text: string, cell: { x: number; width: number }, align: ListCell['align']): ListCell => ({
    ...{ ...cell, align },
    lines: [{ text, size: small, weight: 'bold' }],
  });
  const heads: readonly ListCell[] = [
    { ...head('No.', columns.number, 'end'), column: 1 },
    { ...head('Rider and horse', columns.name, 'start'), column: 2, span: 2 },
    ...(look.hasTimes
      ? [{ ...head(times.counts === 'time-of-day' ? 'About' : 'After', columns.when, 'end'), column: WHEN }]
      : []),
  ];
  const { drawn } = of.course.class;
  const notes = [
    ...(times.scratched.length > 0 ? [`Scratched: ${scratchedWords(times)}.`] : []),
    ...(times.counts === 'from-start' && look.hasTimes ? ['Times count from the first go.'] : []),
    ...(drawn === undefined ? [] : [drawWords(drawn)]),
  ];
  return {
    head: listRow(heads, { width, padding: 1, rule: HEAD_RULE, reads: HEADS }),
    rows: [
      ...times.rows.map((row) => rowOf(of, row, columns, look, width)),
      ...notes.map((text) => noteRow(text, width, small)),
    ],
  };
}

function draw(of: Survey, options: PageOptions): Pages {
  const [paper] = paperSizes(options);
  if (paper === undefined) throw new Error(`order of go: no paper ${options.paper}`);
  const hasTimes = chosenOf(TIMES, options) === 'about';
  const { course } = of;
  const pagesAt = ({ columns, size }: (typeof SETTINGS)[number]): Pages =>
    blockPages({
      ...{ course, paper, columnCount: columns },
      name: `Order of go: ${displayTitle(course)}`,
      facts: goFacts(of),
      rowsFor: (width) => {
        if (goTimesOf(of).rows.length > 0) return rowsFor(of, width, { size, hasTimes, isWide: columns === 1 });
        const none = noteRow('Nobody is entered yet. Type or paste the entries at Post, Entries.', width, 5);
        return { head: listRow([], { width, padding: 0, rule: 0 }), rows: [none] };
      },
      remark: hasTimes ? GO_CAUTION : 'Be at the gate early: entries may scratch.',
    });
  const rows = goTimesOf(of).rows.length;
  for (const setting of SETTINGS) {
    // A page is never so high: what cannot fit is not laid out.
    if ((rows * leastHeight(setting.size)) / setting.columns > paper.height) continue;
    const pages = pagesAt(setting);
    if (pages.pages.length === 1) return pages;
  }
  const long = LONG_SETTINGS.map(pagesAt);
  const least = Math.min(...long.map(({ pages }) => pages.length));
  return long.find(({ pages }) => pages.length === least) ?? pagesAt(LONG_SETTINGS[0] ?? { columns: 2, size: 4.2 });
}

export const orderOfGo: Sheet = { id: 'go', title: 'Order of go', options: [TIMES], draw };
