/**
 * The gate sheet: the order of go for the steward at the gate, with boxes for who is here, in the hole, on deck and gone, room
 * for notes, scratches struck out, and what is next.
 */
import type { Entry } from '../core/course/course.ts';
import { classAfter } from '../core/go/day-after.ts';
import { drawWords } from '../core/go/draw-words.ts';
import { type GoRow, goTimesOf, goTimeWords, listOf } from '../core/go/go-times.ts';
import { printMinutes } from '../core/measure/duration.ts';
import { printTimeOfDay } from '../core/measure/time-of-day.ts';
import type { Survey } from '../core/survey.ts';
import { type BlockRow, blockPages, type ColumnRows } from './block-pages.ts';
import { calledWords, columnTexts, goFacts, pauseWords } from './go-facts.ts';
import { SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { cellLines, type ListCell, listRow } from './list-rows.ts';
import { paperSizes } from './page-layout.ts';
import type { PageOptions, Pages, Sheet } from './sheet.ts';
import { displayTitle } from './title-block.ts';

/** Letter heights, mm, the best first: a smaller one is taken where it saves a page. */
const FONT_SIZES = [4.6, 4.2, 3.9, 3.7] as const;
/** What is ticked, in the order in which it comes about. "In the hole" goes after the one on deck: the trade's own words. */
const BOXES = ['Here', 'In the hole', 'On deck', 'Gone'] as const;
const BOX_WIDTH = 11.5;
const BOX = 5;
const SPACE = 2.5;
const PADDING = 0.7;
/** mm: a copy in black and white still has it. */
const RULE = 0.25;
const HEAD_RULE = 0.4;
/** For who is read to: the boxes, number, name, when, notes. */
const HEADS = { columns: 8, tag: 'TH' } as const;
const CELLS = { columns: 8, tag: 'TD' } as const;
const COLUMN = { number: 4, name: 5, when: 6, notes: 7 } as const;
/** Share of what is left for notes by hand. */
const NOTES_SHARE = 0.36;

interface Columns {
  readonly boxes: readonly { readonly x: number; readonly width: number }[];
  readonly number: { readonly x: number; readonly width: number };
  readonly name: { readonly x: number; readonly width: number };
  readonly when: { readonly x: number; readonly width: number };
  readonly notes: { readonly x: number; readonly width: number };
}

/** Of what stands beside or below a name. */
function lesser(size: number): number {
  return Math.max(SMALLEST_FONT_SIZE, size * 0.85);
}

function columnsOf(of: Survey, width: number, size: number): Columns {
  const { numbers, times } = columnTexts(of);
  const widest = (texts: readonly string[], at: number): number =>
    Math.max(0, ...texts.map((text) => textWidth(text, at, 'bold')));
  const boxes = BOXES.map((_, i) => ({ x: i * BOX_WIDTH, width: BOX_WIDTH }));
  const numberX = BOXES.length * BOX_WIDTH + SPACE;
  const number = Math.max(10, widest(numbers, size * 1.15));
  const nameX = numberX + number + SPACE;
  const when = widest([...times, 'About'], lesser(size));
  const left = width - nameX - when - 3 * SPACE;
  const notes = left * NOTES_SHARE;
  const name = left - notes;
  return {
    boxes,
    number: { x: numberX, width: number },
    name: { x: nameX, width: name },
    when: { x: nameX + name + SPACE, width: when },
    notes: { x: width - notes, width: notes },
  };
}

/** The rows of the ring, and those who are scratched where they stand in the list. */
function inOrder(list: readonly Entry[], rows: readonly GoRow[]): readonly (GoRow | Entry)[] {
  const rest = [...rows];
  const all: (GoRow | Entry)[] = [];
  for (const entry of list) {
    if (entry.scratched === true) {
      all.push(entry);
      continue;
    }
    for (let row = rest.shift(); row !== undefined; row = rest.shift()) {
      all.push(row);
      if (row.kind === 'go') break;
    }
  }
  return [...all, ...rest];
}

function entryCells(entry: Entry, columns: Columns, size: number): readonly ListCell[] {
  const { number, rider, horse } = entry;
  return [
    {
      ...columns.number,
      column: COLUMN.number,
      align: 'end',
      lines: [{ text: number, size: size * 1.15, weight: 'bold' }],
    },
    {
      ...columns.name,
      column: COLUMN.name,
      align: 'start',
      lines: [
        ...cellLines(rider, columns.name.width, { size, weight: 'bold' }),
        ...cellLines(horse, columns.name.width, { size: lesser(size) }),
      ],
    },
  ];
}

function rowOf(of: Survey, row: GoRow | Entry, columns: Columns, look: { width: number; size: number }): BlockRow {
  const { width, size } = look;
  const least = BOX + 3;
  if (!('kind' in row)) {
    const struck = entryCells(row, columns, size).map((cell): ListCell => ({ ...cell, struck: true }));
    const lines = [{ text: 'Scratched', size: lesser(size) }];
    const note: ListCell = { ...columns.notes, column: COLUMN.notes, align: 'start', lines };
    return listRow([...struck, note], { width, padding: PADDING, rule: RULE, least, reads: CELLS });
  }
  const text = goTimeWords(goTimesOf(of), row.from);
  const when: ListCell = { ...columns.when, column: COLUMN.when, align: 'end', lines: [{ text, size: lesser(size) }] };
  if (row.kind !== 'go') {
    const room = columns.name.x + columns.name.width - columns.number.x;
    const lines = cellLines(pauseWords(row), room, { size, weight: 'bold' });
    const at = { x: columns.number.x, width: room, column: COLUMN.number, span: 2 };
    const pause: ListCell = { ...at, align: 'start', lines };
    const box: ListCell = { x: columns.boxes.at(-1)?.x ?? 0, width: BOX_WIDTH, align: 'middle', lines: [], box: BOX };
    const block = listRow([box, pause, when], { width, padding: PADDING, rule: RULE, least, reads: CELLS });
    return row.kind === 'drag' ? { ...block, keepsWithNext: true, called: pauseWords(row) } : block;
  }
  const late = row.entry.late === undefined ? '' : `${printMinutes(row.entry.late)} late`;
  const cells: readonly ListCell[] = [
    ...columns.boxes.map((each): ListCell => ({ ...each, align: 'middle', lines: [], box: BOX })),
    ...entryCells(row.entry, columns, size),
    when,
    {
      ...columns.notes,
      column: COLUMN.notes,
      align: 'start',
      lines: late === '' ? [] : [{ text: late, size: lesser(size) }],
    },
  ];
  const called = calledWords(row.entry);
  const block = listRow(cells, { width, padding: PADDING, rule: RULE, least, reads: CELLS });
  return called === '' ? block : { ...block, called };
}

/** What comes when the last of the class has gone. */
function nextWords(of: Survey): string {
  const after = classAfter(of.course);
  if (after === undefined) return '';
  const not = after.startsAt === undefined ? '' : `, not before ${printTimeOfDay(after.startsAt)}`;
  return `Next class: ${after.title}${not}.`;
}

function rowsFor(of: Survey, width: number, size: number): ColumnRows {
  const times = goTimesOf(of);
  const columns = columnsOf(of, width, size);
  const head = (text: string, cell: { x: number; width: number }, align: ListCell['align']): ListCell => ({
    ...{ ...cell, align },
    lines: [{ text, size: SMALLEST_FONT_SIZE, weight: 'bold' }],
  });
  const heads = [
    ...BOXES.flatMap((text, i) => {
      const cell = columns.boxes[i];
      const lines = cellLines(text, BOX_WIDTH - 1, { size: SMALLEST_FONT_SIZE, weight: 'bold' });
      return cell === undefined ? [] : [{ ...cell, align: 'middle' as const, lines }];
    }),
    head('No.', columns.number, 'end'),
    head('Rider and horse', columns.name, 'start'),
    head(times.counts === 'time-of-day' ? 'About' : 'After', columns.when, 'end'),
    head('Notes', columns.notes, 'start'),
  ];
  const { drawn } = of.course.class;
  const notes = [
    nextWords(of),
    drawn === undefined ? '' : drawWords(drawn),
    times.counts === 'from-start' && times.rows.length > 0 ? 'Times count from the first go.' : '',
  ].filter((text) => text !== '');
  return {
    head: listRow(heads, { width, padding: 1, rule: HEAD_RULE, reads: HEADS }),
    rows: [
      ...inOrder(listOf(of.course.class), times.rows).map((row) => rowOf(of, row, columns, { width, size })),
      ...notes.map((text): BlockRow => {
        const cell: ListCell = { x: 0, width, align: 'start', lines: cellLines(text, width, { size }) };
        return listRow([cell], { width, padding: 1.2, rule: 0 });
      }),
    ],
  };
}

function draw(of: Survey, options: PageOptions): Pages {
  const [paper] = paperSizes(options);
  if (paper === undefined) throw new Error(`gate sheet: no paper ${options.paper}`);
  const { course } = of;
  const isEmpty = listOf(course.class).length === 0;
  const pagesAt = (size: number): Pages =>
    blockPages({
      ...{ course, paper, columnCount: 1 },
      name: `Gate sheet: ${displayTitle(course)}`,
      facts: goFacts(of),
      rowsFor: (width) => {
        if (!isEmpty) return rowsFor(of, width, size);
        const text = 'Nobody is entered yet. Type or paste the entries at Post, Entries.';
        const none: ListCell = { x: 0, width, align: 'start', lines: cellLines(text, width, { size: 5 }) };
        return {
          head: listRow([], { width, padding: 0, rule: 0 }),
          rows: [listRow([none], { width, padding: 1, rule: 0 })],
        };
      },
      remark: 'For the gate. Times are estimates.',
    });
  const [first, ...smaller] = FONT_SIZES;
  return smaller.reduce((best, size) => {
    const tried = best.pages.length === 1 ? best : pagesAt(size);
    return tried.pages.length < best.pages.length ? tried : best;
  }, pagesAt(first));
}

export const gateSheet: Sheet = { id: 'gate', title: 'Gate sheet', draw };
