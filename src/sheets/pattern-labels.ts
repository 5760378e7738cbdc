/** The labels of a pattern as the search for places takes them: words, letters, numbers, turns, each with its line. */
import type { PlacedObstacle } from '../core/course/placed.ts';
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { footprintOnPaper } from './ground.ts';
import { handOf } from './handled-words.ts';
import type { LabelPlace, LabelWish } from './label-search.ts';
import { numberMark } from './labels.ts';
import { ASCENT, backingRadius, DESCENT, type FontWeight, SMALLEST_FONT_SIZE, textWidth } from './lettering.ts';
import { paperRingContains, paperSegmentDistance } from './occupancy-grid.ts';
import { boxPointDistance, pointBounds } from './paper-shapes.ts';
import type { PaperPoint, PaperTransform } from './paper-transform.ts';
import { type SpotTurn, turnMarks } from './travel.ts';

/** A label that looks for its place, and what is drawn there. */
export interface Label {
  readonly wish: LabelWish;
  marks(place: LabelPlace): readonly Mark<'paper'>[];
}

export interface LabelStyle {
  readonly size: number;
  readonly weight: FontWeight;
}

export const BOLD_WORD: LabelStyle = { size: 3.3, weight: 'bold' };
/** For what is said at many places. */
export const SMALL_WORD: LabelStyle = { size: SMALLEST_FONT_SIZE, weight: 'regular' };

/** A word farther than this from what it names has a line to it, mm; a number sooner sees its obstacle. */
const WORD_FAR = 4.2;
const NUMBER_FAR = 6;
const LETTER_FAR = 3;
/** A line to a label, mm. */
export const LEADER_WIDTH = 0.18;
/** Half of a sign for a turn that stands apart, mm. */
const TURN_ICON = 3.2;

export function leaderMarks({ leader }: LabelPlace): readonly Mark<'paper'>[] {
  return leader === undefined ? [] : [{ kind: 'line', ink: 'words', points: leader, width: LEADER_WIDTH }];
}

function pointBox({ x, y }: PaperPoint) {
  return { minX: x, maxX: x, minY: y, maxY: y };
}

/** Letters whose box has its middle at a place. */
export function wordsAbout(text: string, { x, y }: PaperPoint, { size, weight }: LabelStyle): Mark<'paper'> {
  const baseline = y + ((ASCENT - DESCENT) / 2) * size;
  return { kind: 'words', at: { x, y: baseline }, text, size, weight, ink: 'words', align: 'middle' };
}

function wordSize(text: string, { size, weight }: LabelStyle): { readonly width: number; readonly height: number } {
  return { width: textWidth(text, size, weight), height: size * (ASCENT + DESCENT) };
}

/** So far from a place towards another: where a line to a sign ends. */
function towards(from: PaperPoint, to: PaperPoint, by: number): PaperPoint {
  const k = by / (distance(from, to) || 1);
  return { x: from.x + (to.x - from.x) * k, y: from.y + (to.y - from.y) * k };
}

interface WordOptions {
  readonly style?: LabelStyle;
  readonly reach?: number;
  /** Farther than this from the edge of what it names it has a line to it, mm. */
  readonly far?: number;
  readonly isOptional?: boolean;
}

/** A word about a place; `reach` is the half size of what stands there. */
export function wordLabel(
  text: string,
  at: PaperPoint,
  { style = SMALL_WORD, reach = 0, far = WORD_FAR, isOptional = false }: WordOptions = {},
): Label {
  const { x, y } = at;
  return {
    wish: {
      ...wordSize(text, style),
      around: { minX: x - reach, maxX: x + reach, minY: y - reach, maxY: y + reach },
      cost: (middle, off) => off + 0.04 * Math.abs(middle.x - x) + 0.06 * Math.abs(middle.y - y),
      far,
      tip: (middle) => towards(at, middle, reach),
      ...(isOptional ? { isOptional: true } : {}),
    },
    marks: (place) => [...leaderMarks(place), wordsAbout(text, place.middle, style)],
  };
}

/** The letter of a marker, read with the marker next to it: others of its like repel it. */
export function letterLabel(
  letter: string,
  at: PaperPoint,
  { reach, others }: { readonly reach: number; readonly others: readonly PaperPoint[] },
): Label {
  const box = { minX: at.x - reach, maxX: at.x + reach, minY: at.y - reach, maxY: at.y + reach };
  return {
    wish: {
      ...wordSize(letter, BOLD_WORD),
      around: box,
      cost: (middle, off) => {
        const nearest = Math.min(...others.map((other) => distance(other, middle)), 99);
        return 1.5 * off + 3 * Math.max(0, distance(at, middle) - nearest + 2);
      },
      far: LETTER_FAR,
      tip: (middle) => towards(at, middle, reach),
    },
    marks: (place) => [...leaderMarks(place), wordsAbout(letter, place.middle, BOLD_WORD)],
  };
}

/** An obstacle as its outlines on paper. */
export interface Outlines {
  readonly rings: readonly (readonly PaperPoint[])[];
  readonly bounds: Bounds;
}

export function outlinesOf(transform: PaperTransform, { pieces }: PlacedObstacle): Outlines {
  const rings = pieces.map((piece) => footprintOnPaper(transform, piece));
  return { rings, bounds: pointBounds(rings.flat()) };
}

/** The nearest place on the outlines, and how far it is; none where the place is inside of one. */
function nearestOn({ rings }: Outlines, { x, y }: PaperPoint): { readonly at: PaperPoint; readonly off: number } {
  let best = { at: { x, y }, off: Number.POSITIVE_INFINITY };
  for (const ring of rings) {
    if (paperRingContains(ring, x, y)) return { at: { x, y }, off: 0 };
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [a, b] = [ring[j] as PaperPoint, ring[i] as PaperPoint];
      const off = paperSegmentDistance(x, y, a, b);
      if (off >= best.off) continue;
      const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
      const t = square === 0 ? 0 : ((x - a.x) * (b.x - a.x) + (y - a.y) * (b.y - a.y)) / square;
      const k = Math.min(1, Math.max(0, t));
      best = { at: { x: a.x + (b.x - a.x) * k, y: a.y + (b.y - a.y) * k }, off };
    }
  }
  return best;
}

/** A number of the go by its obstacle, near where the line first meets it. */
export function numberLabel(
  number: number,
  outline: Outlines,
  { entry, others }: { readonly entry: PaperPoint | undefined; readonly others: readonly Outlines[] },
): Label {
  const radius = backingRadius(numberMark(String(number), { x: 0, y: 0 }));
  return {
    wish: {
      width: 2 * radius,
      height: 2 * radius,
      around: outline.bounds,
      cost: (middle) => {
        const own = nearestOn(outline, middle).off;
        const toEntry = entry === undefined ? 0 : distance(middle, entry);
        let nearest = 99;
        for (const { bounds } of others) nearest = Math.min(nearest, boxPointDistance(bounds, middle));
        // A number nearer to a neighbour than to its own obstacle would be read as the neighbour's.
        return own + 0.3 * toEntry + 2 * Math.max(0, own - nearest + 2);
      },
      far: NUMBER_FAR,
      tip: (middle) => nearestOn(outline, middle).at,
      isRound: true,
    },
    marks: (place) => [...leaderMarks(place), numberMark(String(number), place.middle)],
  };
}

export function turnText(by: number): string {
  return `${Math.round((Math.abs(by) * 180) / Math.PI)}° ${handOf(by)}`;
}

/** A turn whose sign has no room where it is made: the sign and its words together, with a line to the place. */
export function turnLabel(turn: SpotTurn, text: string): Label {
  const { width, height } = wordSize(text, BOLD_WORD);
  const whole = 2 * TURN_ICON + 0.8 + width;
  return {
    wish: {
      width: whole,
      height: Math.max(height, 2 * TURN_ICON),
      around: pointBox(turn.at),
      cost: (middle, off) => off + 0.04 * Math.abs(middle.x - turn.at.x),
      far: 1.2,
      tip: () => turn.at,
    },
    marks: (place) => {
      const { x, y } = place.middle;
      const icon = { x: x - whole / 2 + TURN_ICON, y };
      return [
        ...leaderMarks(place),
        ...turnMarks({ ...turn, at: icon }),
        wordsAbout(text, { x: x + whole / 2 - width / 2, y }, BOLD_WORD),
      ];
    },
  };
}
