import { layoutById } from '../change/layout-survey.ts';
import { loadsOf } from '../change/loads.ts';
import type { Course, Layout, Stock } from '../course/course.ts';
import { type PlacedPiece, placedObstacle } from '../course/placed.ts';
import { printLength } from '../measure/length.ts';
import { completeValues } from '../pieces/params.ts';
import { PIECE_KINDS, pieceKind } from '../pieces/pieces.ts';
import { thingWords } from '../pieces/thing-words.ts';
import { setOutCrewOf } from '../setout/crew.ts';
import { truckUse } from '../survey.ts';
import { capitalized, counted } from '../text/sentence.ts';

/** One thing to load. */
export interface TruckLine {
  readonly title: string;
  /** Which sizes of it, where the line of the truck list leaves them open: "4 × 12' pole; 2 × 8' pole"; else empty. */
  readonly sizes: string;
  /** How many lie in each of the layouts, and in the one with most. */
  readonly uses: readonly number[];
  readonly most: number;
  /** How many are taken along beside those, as far as there are any. */
  readonly spare: number;
  /** How many spares there ought to be. */
  readonly spareWanted: number;
  /** How many there are; null where no list says. */
  readonly there: number | null;
  readonly missing: number;
}

/** What the truck is loaded with for some layouts, one after the other: what lies in one is used again in the next. */
export interface LoadingList {
  readonly layouts: readonly Layout[];
  readonly things: readonly TruckLine[];
  /** Cups or risers by their height. */
  readonly risers: readonly TruckLine[];
  /** Tools of a crew. Common practice, no source. */
  readonly tools: readonly string[];
  /** Lines of the truck list of which nothing is used. */
  readonly unused: readonly string[];
}

/** One spare for so many in use, and at least one. Common practice, no source. */
const SPARED_BY = 10;

function spareFor(most: number): number {
  return Math.ceil(most / SPARED_BY);
}

interface Counted {
  readonly title: string;
  readonly uses: readonly number[];
}

/** By title, in the order in which they come first: how many each layout has. */
function countedBy(titles: readonly (readonly string[])[]): readonly Counted[] {
  const all = [...new Set(titles.flat())];
  return all.map((title) => ({ title, uses: titles.map((own) => own.filter((each) => each === title).length) }));
}

function lineOf({ title, uses }: Counted, about: { stock: Stock | null; isSpared: boolean; isListed: boolean }) {
  const most = Math.max(0, ...uses);
  const there = about.stock?.count ?? (about.isListed ? 0 : null);
  const wanted = about.isSpared && most > 0 ? spareFor(most) : 0;
  const spare = there === null ? wanted : Math.min(wanted, Math.max(0, there - most));
  const line = { title, sizes: '', uses, most, spare, spareWanted: wanted };
  return { ...line, there, missing: there === null ? 0 : Math.max(0, most - there) };
}

interface Ground {
  readonly pieces: readonly PlacedPiece[];
  readonly loads: ReturnType<typeof loadsOf>;
}

function sizesOf(kind: string, keysOf: readonly (readonly PlacedPiece[])[], unit: Course['unit']): string {
  const found = pieceKind(kind);
  if (found === undefined) return '';
  const words = keysOf.map((own) => own.map(({ piece }) => thingWords(found, piece.values, unit)));
  const groups = countedBy(words);
  if (groups.length < 2) return '';
  return groups.map(({ title, uses }) => `${Math.max(...uses)} × ${title}`).join('; ');
}

function listedLines(course: Course, grounds: readonly Ground[]): readonly (TruckLine & { readonly stock: Stock })[] {
  const uses = grounds.map(({ pieces }) => ({ pieces, use: truckUse(course.truck, pieces) }));
  return course.truck.map((stock, i) => {
    const own = uses.map(({ pieces, use }) => {
      const keys = new Set(use[i]?.keys ?? []);
      return pieces.filter(({ key }) => keys.has(key));
    });
    const isSpared = pieceKind(stock.kind)?.handling?.isSpared === true;
    const counts = { title: stock.title, uses: own.map(({ length }) => length) };
    const line = lineOf(counts, { stock, isSpared, isListed: true });
    return { ...line, sizes: sizesOf(stock.kind, own, course.unit), stock };
  });
}

/** Pieces of no line of the truck list, by kind and sizes. */
function strangerLines(course: Course, grounds: readonly Ground[]): readonly TruckLine[] {
  const strangers = grounds.map(({ pieces }) => {
    const keys = new Set(truckUse(course.truck, pieces).flatMap(({ stock, keys }) => (stock === null ? keys : [])));
    return pieces.filter(({ key }) => keys.has(key));
  });
  return PIECE_KINDS.flatMap((kind) => {
    const words = strangers.map((own) =>
      own.filter(({ piece }) => piece.kind === kind.id).map(({ piece }) => thingWords(kind, piece.values, course.unit)),
    );
    const about = { stock: null, isSpared: kind.handling?.isSpared === true, isListed: course.truck.length > 0 };
    return countedBy(words).map((each) => ({ ...lineOf(each, about), title: capitalized(each.title) }));
  });
}

function riserLines({ unit }: Course, grounds: readonly Ground[]): readonly TruckLine[] {
  const heights = grounds.map(({ loads }) =>
    loads.flatMap(({ thing, piece, key }) => {
      if (thing !== 'riser') return [];
      const fittings = pieceKind(piece.kind)?.handling?.fittings?.(piece.values) ?? [];
      const own = fittings.find(({ end }) => key.endsWith(`:${end}`));
      return own === undefined ? [] : [`Cups or risers, ${printLength(own.height, unit)} high`];
    }),
  );
  return countedBy(heights).map((each) => lineOf(each, { stock: null, isSpared: true, isListed: false }));
}

/** What a crew takes along beside the course itself. Common practice, no source. */
function toolWords(course: Course, grounds: readonly Ground[], numbers: number): readonly string[] {
  const crew = setOutCrewOf(course);
  const rolling = grounds.map(
    ({ pieces }) =>
      pieces.filter(({ kind, piece }) => kind.handling?.rolls?.(completeValues(kind.params, piece.values)) === true)
        .length,
  );
  const chocks = 2 * Math.max(0, ...rolling);
  return [
    `${counted(crew.tapes, 'tape')} of ${printLength(crew.tape, crew.marked)}, marked in ${crew.marked === 'ft' ? 'feet and inches' : 'metres'}`,
    crew.rightAngle === 'board'
      ? 'Board for right angles (3-4-5)'
      : 'Board for right angles (3-4-5), where there is one',
    'Marking chalk or paint, and pegs',
    `Gloves, ${counted(crew.people, 'pair')}`,
    ...(chocks > 0 ? [`${chocks} chocks, two for each round pole`] : []),
    ...(numbers > 0 ? [`Number signs, 1 to ${numbers}`] : []),
    'Rake and shovel',
    'Knife, tape and screws to mend with',
    'Set-up sheet, ring cards, patterns and gate sheet',
  ];
}

/** What to load for layouts of a course, by their ids. Throws where there is no such layout. */
export function truckLoad(course: Course, ids: readonly string[]): LoadingList {
  const layouts = [...new Set(ids)].map((id) => layoutById(course, id));
  const grounds = layouts.map(({ obstacles }): Ground => {
    const placed = obstacles.map(placedObstacle);
    return { pieces: placed.flatMap(({ pieces }) => pieces), loads: loadsOf(placed, 2) };
  });
  const listed = listedLines(course, grounds);
  return {
    layouts,
    things: [
      ...listed.filter(({ most }) => most > 0).map(({ stock: _, ...line }) => line),
      ...strangerLines(course, grounds),
    ],
    risers: riserLines(course, grounds),
    tools: toolWords(course, grounds, Math.max(0, ...layouts.map(({ ride }) => ride.legs.length))),
    unused: listed.filter(({ most }) => most === 0).map(({ title }) => title),
  };
}

/** The layouts of a course's day in the order in which they are first ridden; without a day the shown one. */
export function dayLayouts({ day, current }: Course): readonly string[] {
  const ridden = [...new Set((day?.classes ?? []).map(({ layout }) => layout))];
  return ridden.length === 0 ? [current] : ridden;
}
