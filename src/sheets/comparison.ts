/** Layouts side by side on paper: a table of measures with the better one marked, then what differs and how hard each is. */
import { type ComparedMeasure, comparison } from '../core/change/comparison.ts';
import { differenceWords, goDifferenceWords, obstacleLabel } from '../core/change/difference-words.ts';
import { layoutDifferences } from '../core/change/differences.ts';
import { type DifficultyShare, difficulty } from '../core/change/difficulty.ts';
import { goDifferences } from '../core/change/go-differences.ts';
import { layoutById, layoutSurvey } from '../core/change/layout-survey.ts';
import { MEASURES, type Measure } from '../core/change/measures.ts';
import type { Course, Layout } from '../core/course/course.ts';
import { horseById } from '../core/horses/horses.ts';
import { printLength } from '../core/measure/length.ts';
import type { LengthUnit } from '../core/measure/quantity.ts';
import { andList, capitalized } from '../core/text/sentence.ts';
import type { TextItem } from './flow.ts';
import { reportPages } from './report-pages.ts';
import type { TableColumn, TableRow } from './ruled-table.ts';
import type { Pages, Paper } from './sheet.ts';
import { arenaInWords, rulebookInWords } from './title-block.ts';

/** Letter heights, mm: a list for one person. */
const FONT_SIZES = [3.5, 3.2] as const;
/** Shares of the page's width. */
const MEASURE_WIDTH = 5;
const LAYOUT_WIDTH = 3;
/** Stands before the better value, so that it is found without colour. */
const BEST_SIGN = '✓';

/** What is put on paper. */
export interface ComparisonOptions {
  /** Ids, in the order of the columns; the first is the one that the others are told against. */
  readonly layouts: readonly string[];
  /** Absent: all. */
  readonly measures?: readonly Measure[];
  readonly paper: Paper;
}

function measureRow({ measure, values }: ComparedMeasure): TableRow {
  return [
    { text: measure.title },
    ...values.map(({ text, best }) => (best ? { text: `${BEST_SIGN} ${text}`, weight: 'bold' as const } : { text })),
  ];
}

function listItems(texts: readonly string[], empty: string): readonly TextItem[] {
  if (texts.length === 0) return [{ kind: 'paragraph', text: empty }];
  return texts.map((text): TextItem => ({ kind: 'paragraph', text, hang: '–' }));
}

/** What differs on the ground and in the go, from one layout to another. */
function differenceItems(from: Layout, to: Layout, unit: LengthUnit): readonly TextItem[] {
  const layoutOf = (kind: string): Layout => (kind === 'went' || kind === 'left-out' ? from : to);
  const ground = layoutDifferences(from, to);
  // What came and what went is told on the ground.
  const only = new Set(ground.flatMap(({ kind, obstacle }) => (kind === 'came' || kind === 'went' ? [obstacle] : [])));
  const go = goDifferences(from, to).filter(({ obstacle }) => !only.has(obstacle));
  const groundTexts = ground.map((each) => {
    return `${obstacleLabel(each.obstacle, layoutOf(each.kind))}: ${differenceWords(each, unit)}.`;
  });
  const goTexts = go.map((each) => {
    return `${obstacleLabel(each.obstacle, layoutOf(each.kind))}: ${goDifferenceWords(each)}.`;
  });
  return [
    { kind: 'heading', text: `From ${from.title} to ${to.title}: on the ground` },
    ...listItems(groundTexts, 'The two lie the same on the ground.'),
    { kind: 'heading', text: `From ${from.title} to ${to.title}: in the go` },
    ...listItems(goTexts, 'The two are ridden alike.'),
  ];
}

function amountText({ unit, amount }: DifficultyShare, lengths: LengthUnit): string {
  if (unit === 'length') return printLength(amount, lengths);
  const number = String(Number(amount.toFixed(2)));
  return unit === 'count' ? number : `${number} ${unit}`;
}

/** The parts of the difficulty that any of the layouts has, each with what it comes to in every layout. */
function difficultyItems(course: Course, layouts: readonly string[]): readonly TextItem[] {
  const all = layouts.map((id) => difficulty(layoutSurvey(course, id)));
  const titles = layouts.map((id) => layoutById(course, id).title);
  const parts = (all[0]?.parts ?? []).flatMap((part, i): readonly string[] => {
    const shares = all.flatMap(({ parts: own }) => own[i] ?? []);
    if (shares.every(({ points }) => points === 0)) return [];
    const each = shares.map((share, column) => {
      const amount = amountText(share, course.unit);
      return `${titles[column]} ${share.points.toFixed(1)} (${amount})`;
    });
    return [`${part.title}: ${each.join(', ')}. ${part.because}`];
  });
  return [
    { kind: 'heading', text: 'How the difficulty is made up, in points; all points are estimates' },
    ...listItems(parts, 'Nothing is ridden.'),
  ];
}

function measureItems(measures: readonly Measure[]): readonly TextItem[] {
  return [
    { kind: 'heading', text: 'What the measures are' },
    ...measures.map(({ title, says, better }): TextItem => {
      const side = better === null ? '' : ` ${capitalized(better)} is better.`;
      return { kind: 'paragraph', text: `${title}: ${says}${side}`, hang: '–' };
    }),
  ];
}

/** The chosen layouts by the chosen measures, on pages. Throws when a layout is not in the course. */
export function comparisonPages(course: Course, { layouts, measures = MEASURES, paper }: ComparisonOptions): Pages {
  const compared = comparison(course, layouts, measures);
  const columns: readonly TableColumn[] = [
    { title: 'Measure', width: MEASURE_WIDTH, align: 'start' },
    ...compared.layouts.map(({ title }): TableColumn => ({ title, width: LAYOUT_WIDTH, align: 'end' })),
  ];
  const [first, ...others] = layouts.map((id) => layoutById(course, id));
  const shown = measures.some(({ id }) => id === 'difficulty');
  return reportPages({
    course,
    paper,
    orientation: 'portrait',
    name: `Compared: ${andList(compared.layouts.map(({ title }) => title))}`,
    facts: [
      ['Course', course.title],
      ['Arena', arenaInWords(course)],
      ['Rule book', rulebookInWords(course)],
      ['Horse', horseById(course.horse)?.title ?? course.horse],
    ],
    columns,
    rows: compared.measures.map(measureRow),
    items: [
      { kind: 'paragraph', text: `${BEST_SIGN} marks the better of the values in a row. Times are estimates.` },
      ...others.flatMap((other) => (first === undefined ? [] : differenceItems(first, other, course.unit))),
      ...(shown ? difficultyItems(course, layouts) : []),
      ...measureItems(measures),
    ],
    remark: 'For the designer: not for posting.',
    fontSizes: FONT_SIZES,
  });
}
