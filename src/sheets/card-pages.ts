/** The pages of a card: a row an entry, a column an obstacle, with room for a hand; sums, the list of penalties, and a line to sign. */

import type { Mark } from '../core/plane/mark.ts';
import { ARTIFACT, type Role } from '../core/plane/role.ts';
import { cardScoring } from '../core/score/card-scoring.ts';
import { type CardScoring, SCORE_CAUTION } from '../core/score/score-card.ts';
import type { Survey } from '../core/survey.ts';
import { counted } from '../core/text/sentence.ts';
import { cardTiers } from './card-grid.ts';
import { legendItems } from './card-legend.ts';
import {
  type CardGrid,
  type CardLine,
  type CardTrack,
  headMarks,
  line,
  rowHeight,
  rowMarks,
  SUM_WIDTH,
} from './card-rows.ts';
import { balancedHeight, flowedText } from './flow.ts';
import { SMALLEST_FONT_SIZE } from './lettering.ts';
import { manoeuvres } from './manoeuvres.ts';
import { PAGE_MARGIN, paperSizes } from './page-layout.ts';
import { chosenOf, type Page, type PageOptions, type Pages, type SheetOption } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { classHead, continuedTitle, displayTitle, headBlock, wordsMark } from './title-block.ts';

/** What a card is for. */
export interface CardKind {
  readonly title: string;
  /** Who signs it. */
  readonly signs: string;
  readonly tracks: (scoring: CardScoring) => readonly CardTrack[];
  /** At the right of each row; the last one is the total. */
  readonly sums: readonly string[];
  /** Width of the narrowest column, mm. */
  readonly least: (scoring: CardScoring) => number;
}

/** Blank rows after those of the class. */
export const BLANK_ROWS: SheetOption = {
  id: 'blank',
  title: 'Blank rows',
  choices: [
    { id: 'class', title: 'As the class needs' },
    { id: '5', title: '5 more' },
    { id: '10', title: '10 more' },
    { id: '20', title: '20 more' },
  ],
};

export const ENTRY_NAMES: SheetOption = {
  id: 'names',
  title: 'Entries',
  choices: [
    { id: 'shown', title: 'Number, rider and horse' },
    { id: 'number', title: 'Number alone' },
  ],
};

export const PENALTY_LIST: SheetOption = {
  id: 'list',
  title: 'List of penalties',
  choices: [
    { id: 'first', title: 'On the first page' },
    { id: 'every', title: 'On every page' },
  ],
};

/** So many rows where nobody knows how many ride. */
const USUAL_ROWS = 10;
const LABELS = 14.5;
const ENTRY = { shown: 34, number: 18 } as const;
const SPACE = 3;
const SIGN = 9;
const FOOT = 5;
const THIN = 0.2;
const SMALL = SMALLEST_FONT_SIZE;
const GUTTER = 8;

/** Who is on the card, in the order of go; null: a blank row. */
function linesOf({ course }: Survey, options: PageOptions): readonly CardLine[] {
  const { list, entries } = course.class;
  const ride: readonly CardLine[] =
    list === undefined
      ? Array.from({ length: entries }, () => null)
      : list.filter(({ scratched }) => scratched !== true);
  const chosen = chosenOf(BLANK_ROWS, options);
  const more = chosen === 'class' ? (ride.length === 0 ? USUAL_ROWS : 0) : Number(chosen);
  return [...ride, ...Array.from({ length: more }, () => null)];
}

/** Judge or scribe, and a line to sign on. */
function signMarks(who: string, left: number, right: number, y: number): readonly Mark<'paper'>[] {
  const middle = left + (right - left) * 0.55;
  const size = 3.8;
  return [
    wordsMark(`${who}, name`, left, y, { size }),
    line([left + 32, y + 0.8], [middle - 6, y + 0.8], THIN),
    wordsMark('Signature', middle, y, { size }),
    line([middle + 20, y + 0.8], [right, y + 0.8], THIN),
  ];
}

/** The pages of a card of this kind for the class of the survey. */
export function cardPages(survey: Survey, options: PageOptions, kind: CardKind): Pages {
  const { course } = survey;
  const scoring = cardScoring(course.rulebook);
  const orientation = options.orientation === 'portrait' ? 'portrait' : 'landscape';
  const [paper] = paperSizes({ ...options, orientation });
  if (paper === undefined) throw new Error(`card: no paper ${options.paper}`);
  const { width, height } = paper;
  const [left, right] = [PAGE_MARGIN, width - PAGE_MARGIN];
  const hasNames = chosenOf(ENTRY_NAMES, options) === 'shown';
  const entryWidth = ENTRY[hasNames ? 'shown' : 'number'];
  const from = left + entryWidth + LABELS;
  const room = { from, to: right, sums: SUM_WIDTH * kind.sums.length, least: kind.least(scoring) };
  const tiers = cardTiers(manoeuvres(survey), room);
  const grid: CardGrid = {
    tiers,
    tracks: kind.tracks(scoring),
    entryWidth,
    hasNames,
    left,
    right,
    base: scoring.base,
    sums: kind.sums,
  };
  const cut = tiers.flatMap(({ columns }) => columns.filter(({ isCut }) => isCut));
  const items = legendItems(scoring, cut);
  const area = { x: left, y: PAGE_MARGIN, width: right - left };
  const head = classHead(course);
  const name = `${kind.title}: ${displayTitle(course)}`;
  const first = headBlock({ ...head, name }, area);
  const later = continuedTitle({ name, date: head.date }, area);
  const count = width > height ? 2 : 1;
  const legendColumn = (area.width - GUTTER * (count - 1)) / count;
  const legendHeight = balancedHeight(items, { count, width: legendColumn }, SMALL) + 0.001;
  const high = rowHeight(grid);
  const bottom = height - PAGE_MARGIN - FOOT - SIGN;
  const isListed = (page: number): boolean => page === 0 || chosenOf(PENALTY_LIST, options) === 'every';
  const legendTop = bottom - legendHeight;
  const rowsEnd = (page: number): number => (isListed(page) ? legendTop : bottom) - SPACE;
  const headTop = (page: number): number => area.y + (page === 0 ? first : later).height + SPACE;
  const tierHeads = tiers.reduce((sum, { headHeight }) => sum + headHeight, 0);
  const capacity = (page: number): number =>
    Math.max(1, Math.floor((rowsEnd(page) - headTop(page) - tierHeads) / high));
  const lines = linesOf(survey, options);
  const rows: (readonly CardLine[])[] = [];
  for (let at = 0; at < Math.max(1, lines.length); ) {
    const here = lines.slice(at, at + capacity(rows.length));
    rows.push(here);
    at += Math.max(1, here.length);
  }
  const legend = flowedText(
    items,
    Array.from({ length: count }, (_, i) => ({
      page: 0,
      x: left + i * (legendColumn + GUTTER),
      y: legendTop,
      width: legendColumn,
      height: legendHeight,
    })),
    SMALL,
  );
  const pageOf = (index: number): Page => {
    const top = headTop(index);
    const table: Role = { tag: 'Table' };
    const columns = headMarks(grid, top, table);
    const own = (rows[index] ?? []).flatMap((entry, i) =>
      rowMarks(grid, entry, top + columns.height + i * high, table),
    );
    const low = height - PAGE_MARGIN;
    return {
      width,
      height,
      marks: [
        ...(index === 0 ? first : later).marks,
        ...columns.marks,
        ...own,
        ...(isListed(index) ? legend.marks.map(({ mark }) => mark) : []),
        ...signMarks(kind.signs, left, right, low - FOOT),
        wordsMark(SCORE_CAUTION, left, low, { size: SMALL }),
        wordsMark(`Page ${index + 1} of ${rows.length}`, right, low, { size: SMALL, align: 'end', role: ARTIFACT }),
      ],
      about: `${name}, page ${index + 1} of ${rows.length}: ${counted(rows[index]?.length ?? 0, 'row')} and ${counted(survey.layout.ride.legs.length, 'obstacle')}.`,
    };
  };
  const pages: Pages['pages'] = [pageOf(0), ...rows.slice(1).map((_, i) => pageOf(i + 1))];
  return {
    kind: 'pages',
    title: name,
    pages,
    card: { date: course.class.date, author: course.class.show },
    substitutions: substitutionsOf(pages),
  };
}
