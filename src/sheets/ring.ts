/**
 * The ring card: one card an obstacle in the order of the go, with its gaps in large figures and where each is taped, for
 * whoever puts a pole back after a hit. The cards are cut apart.
 */

import { tradeTitle } from '../core/course/obstacle-title.ts';
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { ARTIFACT, asFigure, type Role } from '../core/plane/role.ts';
import type { Ground } from '../core/setout/ground.ts';
import { setOutOf } from '../core/setout/plan-setout.ts';
import type { SetOut, SetOutStep } from '../core/setout/setout.ts';
import { gapGroups } from '../core/setout/words/gap-groups.ts';
import { mergedSentences } from '../core/setout/words/merged-words.ts';
import { observationWords } from '../core/setout/words/observation-words.ts';
import type { PartNames } from '../core/setout/words/place-words.ts';
import { partNames } from '../core/setout/words/setout-words.ts';
import type { Survey } from '../core/survey.ts';
import { capitalized, counted } from '../core/text/sentence.ts';
import { CAP_HEIGHT, fewLines, SMALLEST_FONT_SIZE, textWidth, truncatedText, wrappedLines } from './lettering.ts';
import { PAGE_MARGIN, type PaperSize, paperSizes } from './page-layout.ts';
import { type CardPicture, cardDrawing } from './ring-drawing.ts';
import type { Page, PageOptions, Pages, Sheet } from './sheet.ts';
import { substitutionsOf } from './substitutions.ts';
import { dateInWords, displayTitle, wordsMark } from './title-block.ts';
import { withWholeLengths } from './whole-lengths.ts';

/** A figure of a card, and what it is of. */
interface CardRow {
  readonly figure: string;
  readonly where: string;
}

interface Card {
  readonly title: string;
  readonly rows: readonly CardRow[];
  readonly picture: CardPicture;
}

/** How many cards a page has, and how: in two columns and two rows, or one under the other. */
type Division = 4 | 2;

/** Letter heights of the figures, mm: 24 points at least. */
const FIGURES = [12, 10.5, 9.5, 8.5];
const WHERE = [5, 4.4, 4, 3.6];
const TITLE = 6;
const LEADING = 1.3;
const PADDING = 6;
const CUT = { ink: 'words', width: 0.2, dash: [2, 2], role: ARTIFACT } as const;

/** The tapes of steps, by what they read. Walls only where the obstacle has nothing else to measure from. */
function tapedRows(names: PartNames, steps: readonly SetOutStep[]): readonly CardRow[] {
  const rows = new Map<string, string[]>();
  for (const { piece, observations } of steps) {
    const told = observations.filter(({ kind }) => kind !== 'gap').map((each) => observationWords(names, each, piece));
    for (const figure of new Set(told.map((each) => each.figure))) {
      if (figure === undefined) continue;
      const own = told.filter((each) => each.figure === figure).map(({ measure }) => measure);
      rows.set(figure, [...(rows.get(figure) ?? []), ...own]);
    }
  }
  return [...rows].map(([figure, measures]) => ({
    figure,
    where: `${capitalized(mergedSentences(measures).join('; '))}.`,
  }));
}

function rowsOf(survey: Survey, plan: SetOut, names: PartNames, id: string): readonly CardRow[] {
  const gaps = plan.gaps.filter(({ keys }) => keys.some((key) => key.startsWith(`${id}/`)));
  const held = gapGroups(names, survey, gaps).map(({ figure, where, band, isRidden }) => ({
    figure,
    where: `${capitalized(where)}${isRidden ? ', where the horse goes' : ''}. Must stay ${band}.`,
  }));
  const part = plan.parts.find(({ obstacles }) => obstacles.includes(id));
  const steps = (part?.steps ?? []).filter(({ piece }) => piece.startsWith(`${id}/`));
  const tied = steps.map((step) => ({
    ...step,
    observations: step.observations.filter(({ constraint }) => constraint !== undefined),
  }));
  const tiedRows = [...held, ...tapedRows(names, tied)];
  const rows = tiedRows.length > 0 ? tiedRows : tapedRows(names, steps);
  return rows.map(({ figure, where }) => ({ figure, where: withWholeLengths(where) }));
}

/** Obstacles in the order in which they are first ridden; what is not ridden comes last. */
function inOrder({ obstacles, numbers }: Survey): readonly PlacedObstacle[] {
  const first = ({ obstacle }: PlacedObstacle): number => numbers.get(obstacle.id)?.[0] ?? Number.POSITIVE_INFINITY;
  return obstacles.filter(({ pieces }) => pieces.length > 0).toSorted((a, b) => first(a) - first(b));
}

/** What a card is headed with: what is not ridden and lies alone by what it is. */
function titleOf({ obstacle, pieces }: PlacedObstacle, { layout, numbers }: Survey): string {
  const [only, ...more] = pieces;
  const isAlone = only !== undefined && more.length === 0 && !numbers.has(obstacle.id);
  return isAlone ? only.kind.title : tradeTitle(obstacle, layout);
}

function cardsOf(survey: Survey, plan: SetOut, ground: Ground): readonly Card[] {
  return inOrder(survey).flatMap((placed): Card[] => {
    const { id } = placed.obstacle;
    const part = plan.parts.find(({ obstacles }) => obstacles.includes(id));
    if (part === undefined) return [];
    const names = partNames(survey, plan, part);
    const gaps = plan.gaps.filter(({ keys }) => keys.every((key) => key.startsWith(`${id}/`)));
    const number = (survey.numbers.get(id) ?? []).join(', ');
    const name = placed.obstacle.name ?? titleOf(placed, survey);
    return [
      {
        title: number === '' ? name : `${number}. ${name}`,
        rows: rowsOf(survey, plan, names, id),
        picture: { names, ground, obstacle: placed, gaps },
      },
    ];
  });
}

interface SetRows {
  readonly marks: readonly Mark<'paper'>[];
  readonly height: number;
}

/** The rows one under the other: the figure, and beside it what it is of. */
function setRows(rows: readonly CardRow[], room: Bounds, sizes: { figure: number; where: number }): SetRows {
  const column = Math.max(0, ...rows.map(({ figure }) => textWidth(figure, sizes.figure, 'bold'))) + 4;
  const width = room.maxX - room.minX - column;
  const marks: Mark<'paper'>[] = [];
  const list: Role = { tag: 'L' };
  let y = room.minY;
  for (const { figure, where } of rows) {
    const within: Role = { tag: 'LI', within: list };
    const [label, text] = [{ tag: 'Lbl', within } as const, { tag: 'LBody', within } as const];
    const lines = wrappedLines(where, width, { size: sizes.where });
    const middle = y + sizes.figure * 0.62;
    const baseline = middle + (CAP_HEIGHT * sizes.figure) / 2;
    marks.push(wordsMark(figure, room.minX, baseline, { size: sizes.figure, weight: 'bold', role: label }));
    const textHeight = lines.length * sizes.where * LEADING;
    const top = Math.max(y, middle - textHeight / 2);
    lines.forEach((line, i) => {
      const at = top + (i * LEADING + 1) * sizes.where;
      marks.push(wordsMark(line, room.minX + column, at, { size: sizes.where, role: text }));
    });
    y = Math.max(y + sizes.figure * 1.24, top + textHeight) + 2.5;
  }
  return { marks, height: y - room.minY };
}

/** The drawing's room and the figures': one over the other on a narrow card, else side by side. */
function divided({ minX, maxX, minY, maxY }: Bounds, count: Division): { drawing: Bounds; words: Bounds } {
  if (count === 2) {
    const x = minX + (maxX - minX) * 0.5;
    return { drawing: { minX, maxX: x - 3, minY, maxY }, words: { minX: x + 3, maxX, minY, maxY } };
  }
  const y = minY + (maxY - minY) * 0.52;
  return { drawing: { minX, maxX, minY, maxY: y }, words: { minX, maxX, minY: y + 3, maxY } };
}

interface SetCard {
  readonly marks: readonly Mark<'paper'>[];
  /** Rows that found no room. */
  readonly rest: readonly CardRow[];
  /** Its labels cover nothing, and its lengths stand beside their tapes. */
  readonly isClear: boolean;
}

/** A card in its room: its figures as large as they fit; rows that do not fit at 24 points are left for another card. */
function setCard({ title, rows, picture }: Card, { minX, maxX, minY, maxY }: Bounds, count: Division): SetCard {
  const names = fewLines(title, maxX - minX, { size: TITLE, weight: 'bold', most: 2 });
  const heading = { size: TITLE, weight: 'bold', role: { tag: 'H1' } } as const;
  const under = { minX, maxX, minY: minY + (names.length - 1) * TITLE * 1.2 + TITLE + 3, maxY };
  const { drawing, words } = divided(under, count);
  const height = words.maxY - words.minY;
  // Words that can be read are worth a smaller figure, and both are as large as they can be.
  const tried = FIGURES.flatMap((figure) => WHERE.map((where) => ({ figure, where }))).toSorted(
    (a, b) => 0.6 * (b.figure - a.figure) + 2 * (b.where - a.where),
  );
  const sizes = tried.find((each) => setRows(rows, words, each).height <= height);
  const least = { figure: FIGURES.at(-1) ?? 8.5, where: WHERE.at(-1) ?? 3.6 };
  const fits = (n: number): boolean => setRows(rows.slice(0, n), words, least).height <= height;
  const shown = sizes === undefined ? Math.max(1, rows.findLastIndex((_, i) => fits(i + 1)) + 1) : rows.length;
  const drawn = cardDrawing(picture, drawing);
  return {
    marks: [
      ...names.map((name, i) => wordsMark(name, minX, minY + (1 + i * 1.2) * TITLE - 0.6, heading)),
      ...asFigure(drawn.marks, `${title}: the gaps where they are taped.`),
      ...setRows(rows.slice(0, shown), words, sizes ?? least).marks,
    ],
    rest: rows.slice(shown),
    isClear: drawn.isClear && drawn.isBeside,
  };
}

/** The rooms of the cards of a page, and the lines along which they are cut. */
function cardRooms(
  { width, height }: PaperSize,
  count: Division,
): { rooms: readonly Bounds[]; cuts: readonly Mark<'paper'>[] } {
  const columns = count === 4 || width > height ? 2 : 1;
  const rowCount = count / columns;
  const [cardWidth, cardHeight] = [width / columns, height / rowCount];
  const rooms = Array.from({ length: count }, (_, i): Bounds => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    const inner = (edge: boolean): number => (edge ? PAGE_MARGIN : PADDING);
    return {
      minX: column * cardWidth + inner(column === 0),
      maxX: (column + 1) * cardWidth - inner(column === columns - 1),
      minY: row * cardHeight + inner(row === 0),
      maxY: (row + 1) * cardHeight - inner(row === rowCount - 1) - SMALLEST_FONT_SIZE,
    };
  });
  const line = (a: readonly [number, number], b: readonly [number, number]): Mark<'paper'> => ({
    kind: 'line',
    points: [a, b].map(([x, y]) => ({ x, y })),
    ...CUT,
  });
  return {
    rooms,
    cuts: [
      ...(columns === 2 ? [line([cardWidth, 0], [cardWidth, height])] : []),
      ...(rowCount === 2 ? [line([0, cardHeight], [width, cardHeight])] : []),
    ],
  };
}

/** Every card in a room of this division; rows that found none go on on a card of the same obstacle. */
function setCards(cards: readonly Card[], rooms: readonly Bounds[], count: Division): readonly SetCard[] {
  const set: SetCard[] = [];
  const open = [...cards];
  for (let card = open.shift(); card !== undefined; card = open.shift()) {
    const room = rooms[set.length % count];
    if (room === undefined) throw new Error(`ring card: a page of ${count} has no such room`);
    const one = setCard(card, room, count);
    set.push(one);
    if (one.rest.length > 0)
      open.unshift({ ...card, title: `${card.title.replace(/, continued$/, '')}, continued`, rows: one.rest });
  }
  return set;
}

function draw(survey: Survey, options: PageOptions): Pages {
  const { course, pieces } = survey;
  const plan = setOutOf(survey);
  const ground: Ground = { arena: course.arena, pieces: new Map(pieces.map((piece) => [piece.key, piece])) };
  const cards = cardsOf(survey, plan, ground);
  const [paper] = paperSizes(options);
  if (paper === undefined) throw new Error(`ring card: no paper ${options.paper}`);
  const title = displayTitle(course);
  const four = setCards(cards, cardRooms(paper, 4).rooms, 4);
  const isRoomy = four.every(({ rest, isClear }) => rest.length === 0 && isClear);
  const count: Division = isRoomy ? 4 : 2;
  const { rooms, cuts } = cardRooms(paper, count);
  const set = isRoomy ? four : setCards(cards, rooms, 2);
  const pageCount = Math.max(1, Math.ceil(set.length / count));
  const page = (index: number): Page => {
    const own = set.slice(index * count, (index + 1) * count);
    const feet = own.flatMap((_, i) => {
      const room = rooms[i];
      const text = [title, dateInWords(course.class.date)].filter((each) => each !== '').join(', ');
      return room === undefined
        ? []
        : [
            wordsMark(
              truncatedText(text, room.maxX - room.minX, { size: SMALLEST_FONT_SIZE }),
              room.minX,
              room.maxY + 2.4,
              { size: SMALLEST_FONT_SIZE, role: ARTIFACT },
            ),
          ];
    });
    return {
      width: paper.width,
      height: paper.height,
      marks: [
        ...(own.length > 0 ? cuts : [wordsMark('Nothing lies in this layout.', PAGE_MARGIN, 20, { size: 5 })]),
        ...own.flatMap(({ marks }) => marks),
        ...feet,
      ],
      about: `Ring cards of ${title}: ${counted(own.length, 'card')}, page ${index + 1} of ${pageCount}.`,
    };
  };
  const drawn: Pages['pages'] = [page(0), ...Array.from({ length: pageCount - 1 }, (_, i) => page(i + 1))];
  return {
    kind: 'pages',
    title: `Ring cards: ${title}`,
    pages: drawn,
    card: { date: course.class.date, author: course.class.show },
    substitutions: substitutionsOf(drawn),
  };
}

export const ringCard: Sheet = { id: 'ring', title: 'Ring card', perLayout: true, draw };
