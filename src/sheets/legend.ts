/** The strip under the drawing: the scale in words and as a bar, and a sample of each stroke that occurs. */
import type { PlacedPiece } from '../core/course/placed.ts';
import { FOOT, type LengthUnit } from '../core/measure/quantity.ts';
import type { Ink, Mark } from '../core/plane/mark.ts';
import { ORIGIN } from '../core/plane/pose.ts';
import { linePlaces } from '../core/ride/line-places.ts';
import type { Survey } from '../core/survey.ts';
import { CAP_HEIGHT, textWidth } from './lettering.ts';
import { markOnPaper, onPaper } from './paper-transform.ts';
import { arrowhead, arrowSize, inksOf, turnMarks } from './travel.ts';

const NAMES: Partial<Readonly<Record<Ink, string>>> = {
  walk: 'Walk',
  jog: 'Jog',
  lope: 'Lope',
  back: 'Back',
  'side-pass': 'Side pass',
  turn: 'Turn on the spot',
  work: 'At the gate',
};

const FONT_SIZE = 3.3;
const ROW_HEIGHT = 6.2;
const SAMPLE = 13;
const SPACE = 6;

interface LegendPart {
  readonly width: number;
  marks(x: number, middle: number): readonly Mark<'paper'>[];
}

/** Letters whose capitals stand about the middle of a row. */
function legendWords(text: string, x: number, middle: number): Mark<'paper'> {
  const at = { x, y: middle + (CAP_HEIGHT * FONT_SIZE) / 2 };
  return { kind: 'words', at, text, size: FONT_SIZE, ink: 'words', align: 'start' };
}

function strokePart({ ink, name, dash, width, isPlain }: StrokeSample): LegendPart {
  return {
    width: SAMPLE + 2 + textWidth(name, FONT_SIZE),
    marks: (x, middle) => {
      const label = legendWords(name, x + SAMPLE + 2, middle);
      if (ink === 'turn') {
        const centre = { x: x + SAMPLE / 2, y: middle };
        return [...turnMarks({ at: centre, by: 2 * Math.PI, heading: -Math.PI / 2 }), label];
      }
      const line: Mark<'paper'> = {
        kind: 'line',
        ink,
        points: [
          { x, y: middle },
          { x: x + SAMPLE, y: middle },
        ],
        ...(dash === undefined ? {} : { dash }),
        ...(width === undefined ? {} : { width }),
      };
      if (isPlain) return [line, label];
      const arrow: Mark<'paper'> = {
        kind: 'area',
        ink,
        ring: arrowhead({ x: x + SAMPLE / 2, y: middle }, 0, arrowSize(ink)),
      };
      return [line, arrow, label];
    },
  };
}

/** A stroke that the strip explains. */
export interface StrokeSample {
  readonly ink: Ink;
  readonly name: string;
  /** As on the mark; absent: as the ink has it. */
  readonly dash?: readonly number[];
  readonly width?: number;
  /** A stroke without a direction: its sample has no arrowhead. */
  readonly isPlain?: true;
}

/** What the strip tells of a drawing, beside its scale. */
export interface SheetLegend {
  readonly unit: LengthUnit;
  readonly strokes: readonly StrokeSample[];
  /** One of each kind whose sign has to be told. */
  readonly pieces: readonly PlacedPiece[];
  /** What a short bar across the line says; absent: there is none. */
  readonly tick?: string;
  /** On a screen the drawing has any size: the bar is shown and no scale. */
  readonly isPicture?: true;
  /** What else has to be told, in a few words. */
  readonly words?: string;
}

/** Off the ground by more than its own height, as a pole in cups is. */
function isRaised({ figure }: PlacedPiece): boolean {
  return figure.stands === 'ground' && figure.height > figure.width + 0.01;
}

function pieceTitle(piece: PlacedPiece): string {
  return isRaised(piece) ? `Raised ${piece.kind.title.toLowerCase()}` : piece.kind.title;
}

/** One of each stroke, tick and thing that a drawing of the course shows, and no other. */
export function legendOf(survey: Survey): SheetLegend {
  const pieces = new Map(survey.pieces.map((piece) => [pieceTitle(piece), piece]));
  const strokes = inksOf(survey.line.elements).map((ink) => ({ ink, name: NAMES[ink] ?? ink }));
  const hasTicks = linePlaces(survey.line).length > 0;
  const common = { unit: survey.course.unit, strokes, pieces: [...pieces.values()] };
  return hasTicks ? { ...common, tick: 'Change of gait' } : common;
}

/** The same of a plain drawing: the line and the things. */
export function plainLegendOf(survey: Survey): SheetLegend {
  const { tick: _, strokes, ...legend } = legendOf(survey);
  const turnsShow = survey.line.elements.some(({ move, length }) => move === 'turn' && length > 0);
  return { ...legend, strokes: turnsShow ? strokes : strokes.filter(({ ink }) => ink !== 'turn') };
}

/** Lengths that a scale bar may have, in its unit. */
const BARS = [1, 2, 3, 4, 5, 8, 10, 20, 30, 40, 50, 80, 100, 200, 300, 400, 500, 1000];

export interface ScaleBar {
  /** Millimetres on paper. */
  readonly width: number;
  /** In the course's unit. */
  readonly length: number;
  readonly unit: LengthUnit;
}

/** The longest round length that stays under `most` mm. */
export function scaleBar(scale: number, unit: LengthUnit, most = 52): ScaleBar {
  const one = ((unit === 'ft' ? FOOT : 1) * 1000) / scale;
  const length = BARS.findLast((each) => each * one <= most) ?? 1;
  return { width: length * one, length, unit };
}

function barPart(scale: number, { unit, isPicture }: SheetLegend, most: number): LegendPart {
  const words = isPicture === true ? '' : `Scale 1:${scale}`;
  const before = words === '' ? 0 : textWidth(words, FONT_SIZE) + 4;
  const zero = textWidth('0', FONT_SIZE) + 1.4;
  const left = most - before - zero - textWidth(` 1000 ${unit}`, FONT_SIZE);
  const bar = scaleBar(scale, unit, Math.min(52, left));
  const ends = ['0', `${bar.length} ${unit}`] as const;
  return {
    width: before + zero + bar.width + 1.4 + textWidth(ends[1], FONT_SIZE),
    marks: (x, middle) => {
      const from = x + before + zero;
      const quarter = bar.width / 4;
      const cell = (index: number): Mark<'paper'> => ({
        kind: 'area',
        ink: 'words',
        ring: [
          { x: from + quarter * index, y: middle - 0.8 },
          { x: from + quarter * (index + 1), y: middle - 0.8 },
          { x: from + quarter * (index + 1), y: middle + 0.8 },
          { x: from + quarter * index, y: middle + 0.8 },
        ],
      });
      const frame: Mark<'paper'> = {
        kind: 'line',
        ink: 'words',
        points: [
          { x: from, y: middle - 0.8 },
          { x: from + bar.width, y: middle - 0.8 },
          { x: from + bar.width, y: middle + 0.8 },
          { x: from, y: middle + 0.8 },
          { x: from, y: middle - 0.8 },
        ],
      };
      return [
        ...(words === '' ? [] : [legendWords(words, x, middle)]),
        legendWords(ends[0], x + before, middle),
        cell(0),
        cell(2),
        frame,
        legendWords(ends[1], from + bar.width + 1.4, middle),
      ];
    },
  };
}

export interface LegendBar {
  readonly height: number;
  marks(x: number, y: number): readonly Mark<'paper'>[];
}

/** A thing's sign, 4.5 mm large whatever the drawing's scale, or 9 mm where it is long; and its name. */
function piecePart(piece: PlacedPiece): LegendPart {
  const { figure } = piece;
  const longest = Math.max(figure.length, figure.width);
  const large = longest > 4 * Math.min(figure.length, figure.width) ? 9 : 4.5;
  const scale = (1000 * longest) / large;
  const title = pieceTitle(piece);
  return {
    width: large + 2 + textWidth(title, FONT_SIZE),
    marks: (x, middle) => {
      const frame = { scale, x: x + large / 2, y: middle, turned: false };
      const edge = figure.footprint.map((at) => onPaper(frame, at));
      const first = edge[0];
      const outline: readonly Mark<'paper'>[] =
        first === undefined ? [] : [{ kind: 'line', ink: 'outline', points: [...edge, first] }];
      // The swing of a gate is left out: it would reach into the next row.
      const own = figure.marks.filter((mark) => mark.kind === 'words' || mark.ink !== 'faint');
      const sign = own.flatMap((mark) => markOnPaper(frame, ORIGIN, mark) ?? []);
      return [...sign, ...outline, legendWords(title, x + large + 2, middle)];
    },
  };
}

/** A bar across a piece of line. */
function tickPart(text: string): LegendPart {
  const half = 3;
  return {
    width: 2 * half + 2 + textWidth(text, FONT_SIZE),
    marks: (x, middle) => {
      const bar = [
        { x: x + half, y: middle - 1.7 },
        { x: x + half, y: middle + 1.7 },
      ];
      return [{ kind: 'line', ink: 'words', points: bar, width: 0.35 }, legendWords(text, x + 2 * half + 2, middle)];
    },
  };
}

function wordsPart(text: string): LegendPart {
  return { width: textWidth(text, FONT_SIZE), marks: (x, middle) => [legendWords(text, x, middle)] };
}

/** Scale and strokes in rows no wider than `width`. */
export function legendBar(legend: SheetLegend, scale: number, width: number): LegendBar {
  const { strokes, pieces, tick, words } = legend;
  const ticks = tick === undefined ? [] : [tickPart(tick)];
  const signs = [...strokes.map(strokePart), ...ticks, ...pieces.map(piecePart)];
  const parts = [barPart(scale, legend, width), ...signs, ...(words === undefined ? [] : [wordsPart(words)])];
  const places: { part: LegendPart; x: number; row: number }[] = [];
  let x = 0;
  let row = 0;
  for (const part of parts) {
    if (x > 0 && x + part.width > width) {
      x = 0;
      row += 1;
    }
    places.push({ part, x, row });
    x += part.width + SPACE;
  }
  return {
    height: (row + 1) * ROW_HEIGHT,
    marks: (left, top) => places.flatMap((each) => each.part.marks(left + each.x, top + (each.row + 0.5) * ROW_HEIGHT)),
  };
}
