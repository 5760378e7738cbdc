/** Lengths beside their tapes: each as near to the middle of its tape as there is room, with a line to it where it is far. */
import type { Mark } from '../core/plane/mark.ts';
import { distance } from '../core/plane/point.ts';
import type { Bounds } from '../core/plane/ring.ts';
import { ASCENT, backingRadius, CAP_HEIGHT, DESCENT, type FontWeight, textWidth, type WordsMark } from './lettering.ts';
import {
  blockLabel,
  blockLine,
  crossesLabel,
  isBoxFree,
  type OccupancyGrid,
  paperSegmentDistance,
} from './occupancy-grid.ts';
import type { PaperPoint } from './paper-transform.ts';

/** What is set beside something. */
export interface LabelText {
  readonly text: string;
  /** Letter height, mm. */
  readonly size: number;
  readonly weight: FontWeight;
}

/** A label in its place. */
export interface LabelledMarks {
  readonly marks: readonly Mark<'paper'>[];
  /** It covers nothing. */
  readonly isClear: boolean;
  /** It stands beside what it belongs to, so that it needs no line to it. */
  readonly isBeside: boolean;
}

/** Air round a label, mm. */
const AIR = 0.6;
/** A label farther than this from what it belongs to gets a line to it, mm. */
const FAR = 3.5;
/** How far a label looks for room, mm. */
const SEARCHED = 34;

/** Where along a tape its length may stand, the best first. */
const ALONG = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82];

/** Steps from a place, the nearest first. */
const RINGS: readonly PaperPoint[] = (() => {
  const steps: PaperPoint[] = [];
  for (let y = -SEARCHED; y <= SEARCHED; y += 1.5)
    for (let x = -SEARCHED; x <= SEARCHED; x += 1.5) steps.push({ x, y });
  return steps.toSorted((a, b) => Math.hypot(a.x, a.y) - Math.hypot(b.x, b.y));
})();

interface Box {
  readonly width: number;
  readonly height: number;
}

function boxOf({ text, size, weight }: LabelText): Box {
  return { width: textWidth(text, size, weight) + 2 * AIR, height: size * (ASCENT + DESCENT) + 2 * AIR };
}

/** The box about its middle. */
function boundsAbout({ x, y }: PaperPoint, { width, height }: Box): Bounds {
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
}

function isFree(grid: OccupancyGrid, at: PaperPoint, box: Box): boolean {
  return isBoxFree(grid, boundsAbout(at, box));
}

/** Beside a tape: on either hand of it, its box just off the line. */
function placesBeside(from: PaperPoint, to: PaperPoint, { width, height }: Box): readonly PaperPoint[] {
  const long = distance(from, to);
  if (long === 0) return [];
  const [nx, ny] = [-(to.y - from.y) / long, (to.x - from.x) / long];
  const off = (Math.abs(nx) * width + Math.abs(ny) * height) / 2 + AIR;
  return ALONG.flatMap((t) =>
    [-1, 1].map((side) => ({
      x: from.x + (to.x - from.x) * t + side * nx * off,
      y: from.y + (to.y - from.y) * t + side * ny * off,
    })),
  );
}

/** From the edge of a box to a place outside of it; undefined where it is near enough to be read with it. */
function leader(box: Bounds, to: PaperPoint): readonly [PaperPoint, PaperPoint] | undefined {
  const edge = {
    x: Math.min(Math.max(to.x, box.minX), box.maxX),
    y: Math.min(Math.max(to.y, box.minY), box.maxY),
  };
  return distance(edge, to) <= FAR ? undefined : [edge, to];
}

function leaderMarks(line: readonly [PaperPoint, PaperPoint] | undefined): readonly Mark<'paper'>[] {
  return line === undefined ? [] : [{ kind: 'line', ink: 'words', points: line, width: 0.18 }];
}

/** The label with its middle at a place; the place is taken from then on. */
function setAt(grid: OccupancyGrid, label: LabelText, at: PaperPoint, near?: PaperPoint): readonly Mark<'paper'>[] {
  const box = boundsAbout(at, boxOf(label));
  const line = near === undefined ? undefined : leader(box, near);
  blockLabel(grid, box);
  if (line !== undefined) blockLine(grid, line, 0.3);
  const halfHeight = (label.size * (ASCENT + DESCENT)) / 2;
  const mark: WordsMark = {
    kind: 'words',
    at: { x: at.x, y: at.y + halfHeight - DESCENT * label.size },
    ...label,
    ink: 'words',
    align: 'middle',
  };
  return [...leaderMarks(line), mark];
}

/** The first free place; the last resort is where it belongs, on whatever lies there. `isOwn`: the wanted places need no line. */
function firstFree(
  grid: OccupancyGrid,
  box: Box,
  {
    wanted,
    about,
    isOwn = false,
  }: { readonly wanted: readonly PaperPoint[]; readonly about: PaperPoint; readonly isOwn?: boolean },
) {
  // A line to what it belongs to must not strike out another label.
  const isOpen = (at: PaperPoint): boolean => {
    if (!isFree(grid, at, box)) return false;
    const line = leader(boundsAbout(at, box), about);
    return line === undefined || !crossesLabel(grid, line[0], line[1]);
  };
  const beside = wanted.find((at) => (isOwn ? isFree(grid, at, box) : isOpen(at)));
  if (beside !== undefined) return { at: beside, isClear: true };
  const step = RINGS.find(({ x, y }) => isOpen({ x: about.x + x, y: about.y + y }));
  if (step !== undefined) return { at: { x: about.x + step.x, y: about.y + step.y }, isClear: true };
  // Letters on letters cannot be read at all; a line over letters can.
  const free = RINGS.find(({ x, y }) => isFree(grid, { x: about.x + x, y: about.y + y }, box));
  if (free !== undefined) return { at: { x: about.x + free.x, y: about.y + free.y }, isClear: false };
  return { at: wanted[0] ?? about, isClear: false };
}

/** The length of a tape beside it. */
export function besideTape(
  grid: OccupancyGrid,
  label: LabelText,
  tape: readonly [PaperPoint, PaperPoint],
): LabelledMarks {
  const [from, to] = tape;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const box = boxOf(label);
  const { at, isClear } = firstFree(grid, box, { wanted: placesBeside(from, to, box), about: middle, isOwn: true });
  // Beside its own tape it is near enough wherever along it that is.
  const isBeside = paperSegmentDistance(at.x, at.y, from, to) - Math.hypot(box.width, box.height) / 2 < FAR;
  const marks = setAt(grid, label, at, isBeside ? undefined : middle);
  return { marks, isClear, isBeside: marks.length === 1 };
}

/** A label at the first of the wanted places that is free, else as near as there is room to what it is about. */
export function labelAt(
  grid: OccupancyGrid,
  label: LabelText,
  wanted: readonly PaperPoint[],
  about: PaperPoint,
): LabelledMarks {
  const { at, isClear } = firstFree(grid, boxOf(label), { wanted, about });
  const marks = setAt(grid, label, at, about);
  return { marks, isClear, isBeside: marks.length === 1 };
}

/** The number of a step in a disc, with the name of its piece after it where it has one. */
export interface DiscText {
  readonly number: string;
  readonly name: string;
  /** Letter height, mm. */
  readonly size: number;
}

/** Between a disc and the name after it, mm. */
const AFTER_DISC = 1.2;

/** A disc at the first of the wanted places that is free, else as near as there is room to what it numbers. */
export function numberedDisc(
  grid: OccupancyGrid,
  { number, name, size }: DiscText,
  wanted: readonly PaperPoint[],
  about: PaperPoint,
): LabelledMarks {
  const style = { size, weight: 'bold', ink: 'words' } as const;
  const disc: WordsMark = { kind: 'words', at: about, text: number, align: 'middle', backing: 'disc', ...style };
  const radius = backingRadius(disc);
  const after = name === '' ? 0 : textWidth(name, size, 'bold') + AFTER_DISC;
  const box = { width: 2 * radius + after + 2 * AIR, height: 2 * radius + 2 * AIR };
  const { at, isClear } = firstFree(grid, box, { wanted, about });
  const bounds = boundsAbout(at, box);
  const line = leader(bounds, about);
  blockLabel(grid, bounds);
  if (line !== undefined) blockLine(grid, line, 0.3);
  const y = at.y + (CAP_HEIGHT * size) / 2;
  const x = bounds.minX + AIR + radius;
  return {
    marks: [
      ...leaderMarks(line),
      { ...disc, at: { x, y } },
      ...(name === ''
        ? []
        : [
            {
              kind: 'words' as const,
              at: { x: x + radius + AFTER_DISC, y },
              text: name,
              align: 'start' as const,
              ...style,
            },
          ]),
    ],
    isClear,
    isBeside: line === undefined,
  };
}
