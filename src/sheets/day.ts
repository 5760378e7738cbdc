/** The timetable of a day for the office and the crew: a drawing, then every class, break and change-over with its times. */
import { crewOf } from '../core/change/crew.ts';
import type { ClassTimes, DayTimes } from '../core/change/day-times.ts';
import { brokenWords, DAY_CAUTION, untakenWords, waitWords } from '../core/change/day-words.ts';
import type { Course, Day } from '../core/course/course.ts';
import { dayEntryCount } from '../core/course/day-class.ts';
import { printMinutes } from '../core/measure/duration.ts';
import { printTimeOfDay } from '../core/measure/time-of-day.ts';
import { andList } from '../core/text/sentence.ts';
import type { TextItem } from './flow.ts';
import { reportPages } from './report-pages.ts';
import type { TableColumn, TableRow } from './ruled-table.ts';
import type { Pages, Paper } from './sheet.ts';
import { timeline } from './timeline.ts';
import { arenaInWords, LEVELS } from './title-block.ts';

/** Letter heights, mm: it hangs in the office, and is carried in a pocket. */
const FONT_SIZES = [3.7, 3.5, 3.3, 3.2] as const;

/** What is put on paper: the day in one order of its classes. */
export interface DayOptions {
  readonly paper: Paper;
  readonly times: DayTimes;
}

/** Widths are shares. */
const COLUMNS: readonly TableColumn[] = [
  { title: 'No', width: 3, align: 'end' },
  { title: 'From', width: 6, align: 'end' },
  { title: 'To', width: 6, align: 'end' },
  { title: 'What', width: 18, align: 'start' },
  { title: 'Level', width: 8, align: 'start' },
  { title: 'Layout', width: 12, align: 'start' },
  { title: 'Judge', width: 11, align: 'start' },
  { title: 'Entries', width: 5, align: 'end' },
  { title: 'Takes', width: 7, align: 'end' },
];

/** A row with where it belongs in the day. */
interface TimedRow {
  readonly from: number;
  readonly row: TableRow;
}

function spanCells({ from, to }: { readonly from: number; readonly to: number }): TableRow {
  return [{ text: printTimeOfDay(from) }, { text: printTimeOfDay(to) }];
}

function layoutTitle(course: Course, id: string): string {
  return course.layouts.find((layout) => layout.id === id)?.title ?? id;
}

function changeRow(
  what: string,
  layout: string,
  span: { readonly from: number; readonly to: number },
): readonly TimedRow[] {
  if (span.to - span.from < 1) return [];
  const cells = [what, '', layout, '', '', printMinutes(span.to - span.from)].map((text) => ({ text }));
  return [{ from: span.from, row: [{ text: '' }, ...spanCells(span), ...cells] }];
}

function classRows(course: Course, day: Day, times: ClassTimes, index: number): readonly TimedRow[] {
  const of = day.classes.find(({ id }) => id === times.id);
  const layout = layoutTitle(course, times.layout);
  const dragged = andList(times.drags.map(({ from }) => printTimeOfDay(from)));
  const what = `${of?.title ?? times.id}${dragged === '' ? '' : `; ground dragged at ${dragged}`}`;
  const row: TableRow = [
    { text: String(index + 1), weight: 'bold' },
    ...spanCells(times),
    { text: what, weight: 'bold' },
    { text: of === undefined ? '' : LEVELS[of.level] },
    { text: layout },
    { text: of?.judge ?? '' },
    { text: String(of === undefined ? 0 : dayEntryCount(course, of)) },
    { text: printMinutes(times.to - times.from) },
  ];
  return [...changeRow(index === 0 ? 'Set out' : 'Change over', layout, times.change), { from: times.from, row }];
}

function breakRows(day: Day, { breaks }: DayTimes): readonly TimedRow[] {
  return breaks.map((span) => {
    const title = day.breaks.find(({ id }) => id === span.id)?.title ?? span.id;
    const cells = [title, '', '', '', '', printMinutes(span.to - span.from)].map((text) => ({ text }));
    return { from: span.from, row: [{ text: '' }, ...spanCells(span), ...cells] };
  });
}

function notes(day: Day, times: DayTimes): readonly TextItem[] {
  const texts = [
    ...times.broken.map((rule) => `Not kept: ${brokenWords(day, rule)}`),
    ...times.waits.map((wait) => waitWords(day, wait)),
    ...untakenWords(day, times),
    DAY_CAUTION,
  ];
  return [
    { kind: 'heading', text: 'Please note' },
    ...texts.map((text): TextItem => ({ kind: 'paragraph', text, hang: '–' })),
  ];
}

/** The timetable of a course's day on pages. Throws when the course has no day. */
export function dayPages(course: Course, { paper, times }: DayOptions): Pages {
  const { day } = course;
  if (day === undefined) throw new Error('dayPages: the course has no day');
  const rows = [
    ...times.classes.flatMap((each, i) => classRows(course, day, each, i)),
    ...breakRows(day, times),
    ...changeRow('Take down', '', times.takingDown),
  ].sort((a, b) => a.from - b.from);
  const { people } = crewOf(course);
  return reportPages({
    course,
    paper,
    orientation: 'landscape',
    name: 'Timetable of the day',
    facts: [
      ['Course', course.title],
      ['Arena', arenaInWords(course)],
      ['Crew', people === 1 ? '1 person' : `${people} people`],
      ['Setting out begins', printTimeOfDay(times.starts)],
      ['All is taken down by', printTimeOfDay(times.finish)],
    ],
    drawing: (x, y, width) =>
      timeline(times, (id) => day.breaks.find((each) => each.id === id)?.title ?? id, { x, y, width }),
    columns: COLUMNS,
    rows: rows.map(({ row }) => row),
    items: notes(day, times),
    remark: 'For the office and the crew. Times are estimates.',
    fontSizes: FONT_SIZES,
  });
}
