/** The arrowheads on the line of travel: each where it covers nothing, or beside the line where it has no such place. */
import type { Ink, Mark } from '../core/plane/mark.ts';
import { addShape, coveredByStroke, isRingClear, type ShapeIndex } from './paper-shapes.ts';
import type { PaperPoint } from './paper-transform.ts';
import { arrowhead, arrowSize, type InkRun } from './travel.ts';

/** An arrow about this often along the line, mm. */
const ARROW_EVERY = 38;
/** Shorter runs carry no arrow, mm; a move that could be read both ways does sooner. */
const SHORTEST = { ride: 7, other: 3.5 };
/** Between the places that are tried, mm. */
const STEP = 0.75;
/** Air about an arrowhead, mm. */
const AIR = 0.2;
/** An arrow beside the line: how far off it, the length of its shaft, its head and its stroke, mm. */
const BESIDE = { off: [1.9, 2.6, 3.4], shaft: 4.4, head: 1.9, width: 0.35 };

function isGait(ink: Ink): boolean {
  return ink === 'walk' || ink === 'jog' || ink === 'lope';
}

function lengthOf(points: readonly PaperPoint[]): number {
  return points.slice(1).reduce((sum, at, index) => {
    const before = points[index] as PaperPoint;
    return sum + Math.hypot(at.x - before.x, at.y - before.y);
  }, 0);
}

interface OnRun {
  readonly at: PaperPoint;
  readonly heading: number;
}

function placeAlong(points: readonly PaperPoint[], along: number): OnRun | undefined {
  let rest = along;
  for (let index = 1; index < points.length; index += 1) {
    const a = points[index - 1] as PaperPoint;
    const b = points[index] as PaperPoint;
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (rest <= length && length > 0) {
      const t = rest / length;
      return { at: { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }, heading: Math.atan2(b.y - a.y, b.x - a.x) };
    }
    rest -= length;
  }
  return undefined;
}

/** Places from the wanted one outwards, no farther than `most` from it, clear of the ends of the run. */
function alongs(wanted: number, most: number, length: number, end: number): readonly number[] {
  const count = Math.floor(most / STEP);
  return Array.from({ length: 2 * count + 1 }, (_, i) => wanted + (i % 2 === 0 ? i / 2 : -(i + 1) / 2) * STEP).filter(
    (along) => along > end && along < length - end,
  );
}

/** An arrow with a shaft beside the line, at an offset to its right. */
function besideArrow({ at, heading }: OnRun, off: number, shaft: number): readonly Mark<'paper'>[] {
  const middle = { x: at.x - Math.sin(heading) * off, y: at.y + Math.cos(heading) * off };
  const along = (by: number): PaperPoint => ({
    x: middle.x + Math.cos(heading) * by,
    y: middle.y + Math.sin(heading) * by,
  });
  const tip = along(shaft / 2 - 0.6 * BESIDE.head);
  return [
    { kind: 'line', ink: 'turn', points: [along(-shaft / 2), tip], width: BESIDE.width },
    { kind: 'area', ink: 'turn', ring: arrowhead(tip, heading, BESIDE.head) },
  ];
}

function isClear(index: ShapeIndex, marks: readonly Mark<'paper'>[]): boolean {
  return marks.every((mark) => {
    if (mark.kind === 'area') return isRingClear(index, mark.ring, AIR);
    if (mark.kind !== 'line') return true;
    const [from, to] = mark.points as readonly [PaperPoint, PaperPoint];
    return !coveredByStroke(index, [from, to], BESIDE.width / 2 + AIR).isSolid;
  });
}

function addMarks(index: ShapeIndex, marks: readonly Mark<'paper'>[]): void {
  for (const mark of marks) {
    if (mark.kind === 'area') addShape(index, { points: mark.ring, reach: 0, isFilled: true, firmness: 'solid' });
    if (mark.kind === 'line') addShape(index, { points: mark.points, reach: BESIDE.width / 2, firmness: 'solid' });
  }
}

/** Arrowheads along the runs, clear of all that is solid; each is solid in turn. */
export function arrowMarks(runs: readonly InkRun[], index: ShapeIndex): readonly Mark<'paper'>[] {
  const marks: Mark<'paper'>[] = [];
  for (const { ink, points } of runs) {
    const length = lengthOf(points);
    if (length < (isGait(ink) ? SHORTEST.ride : SHORTEST.other)) continue;
    const size = arrowSize(ink);
    const count = Math.max(1, Math.round(length / ARROW_EVERY));
    let set = 0;
    for (let i = 0; i < count; i += 1) {
      const wanted = (length * (i + 0.5)) / count;
      const ring = alongs(wanted, length / count / 2, length, 0.6 * size)
        .flatMap((along) => placeAlong(points, along) ?? [])
        .map(({ at, heading }) => arrowhead(at, heading, size))
        .find((each) => isRingClear(index, each, AIR));
      if (ring === undefined) continue;
      set += 1;
      const arrow: readonly Mark<'paper'>[] = [{ kind: 'area', ink, ring }];
      addMarks(index, arrow);
      marks.push(...arrow);
    }
    if (set > 0) continue;
    const shaft = Math.min(BESIDE.shaft, length);
    const beside = alongs(length / 2, length / 2, length, 0)
      .flatMap((along) => placeAlong(points, along) ?? [])
      .flatMap((place) => BESIDE.off.flatMap((off) => [off, -off]).map((off) => besideArrow(place, off, shaft)))
      .find((each) => isClear(index, each));
    if (beside === undefined) continue;
    addMarks(index, beside);
    marks.push(...beside);
  }
  return marks;
}
