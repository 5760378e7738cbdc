import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';

/** Side of the squares in which dots are looked up, pixels. */
const CELL = 24;
/** Ground left between two labels, pixels. */
const APART = 2;
/** What a covered dot costs, in pixels of distance from the thing that the label is about. */
const DOT = 14;

/** The middle of a label, and how much farther than the best one it is, pixels. */
export type LabelSpot = Point<'screen'> & { readonly far: number };

/** One of the forms in which a label can be set, the fullest first, each with the places where it may stand. */
export interface LabelForm<Content> {
  readonly content: Content;
  readonly width: number;
  readonly height: number;
  /** Where it may stand; asked only where a fuller form has not found a better place. */
  places(): readonly LabelSpot[];
  /** What it costs to say less, in pixels of distance. */
  readonly less: number;
  /** What else it costs to stand in a box, 0 or more; asked of free places only. Absent: nothing. */
  price?(box: Bounds): number;
}

export interface PlacedLabel<Content> {
  readonly content: Content;
  readonly box: Bounds;
}

/**
 * What labels keep off. `taken` is never covered: other labels, badges, walls, numbers, buttons. Dots are covered as
 * little as can be: samples of the line and of the poles.
 */
export interface Crowd {
  take(box: Bounds): void;
  /**
   * The label in the form and at the place that cost least, and takes it; undefined where no form finds room, or none
   * that covers at most `most` dots.
   */
  put<Content>(forms: readonly LabelForm<Content>[], most?: number): PlacedLabel<Content> | undefined;
}

/** An empty crowd in a picture; `room` is what a label may not stand out of. */
export function createCrowd(
  room: Bounds,
  { taken, dots }: { readonly taken: readonly Bounds[]; readonly dots: readonly Point<'screen'>[] },
): Crowd {
  const boxes = [...taken];
  const columns = Math.max(1, Math.ceil((room.maxX - room.minX) / CELL));
  const cells = new Map<number, Point<'screen'>[]>();
  const column = (x: number) => Math.floor((x - room.minX) / CELL);
  const row = (y: number) => Math.floor((y - room.minY) / CELL);
  for (const dot of dots) {
    if (dot.x < room.minX || dot.x > room.maxX || dot.y < room.minY || dot.y > room.maxY) continue;
    const key = row(dot.y) * columns + column(dot.x);
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, [dot]);
    else cell.push(dot);
  }
  const dotsIn = (box: Bounds) => {
    let count = 0;
    for (let r = row(box.minY); r <= row(box.maxY); r++) {
      for (let c = column(box.minX); c <= column(box.maxX); c++) {
        for (const { x, y } of cells.get(r * columns + c) ?? []) {
          if (x > box.minX && x < box.maxX && y > box.minY && y < box.maxY) count++;
        }
      }
    }
    return count;
  };
  const isFree = (box: Bounds) => {
    if (box.minX < room.minX || box.maxX > room.maxX || box.minY < room.minY || box.maxY > room.maxY) return false;
    const [minX, maxX, minY, maxY] = [box.minX - APART, box.maxX + APART, box.minY - APART, box.maxY + APART];
    for (const other of boxes) {
      if (other.minX < maxX && other.maxX > minX && other.minY < maxY && other.maxY > minY) return false;
    }
    return true;
  };
  return {
    take: (box) => boxes.push(box),
    put(forms, most = Number.POSITIVE_INFINITY) {
      let best: PlacedLabel<(typeof forms)[number]['content']> | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const { content, width, height, places, less, price } of forms) {
        if (less >= least) continue;
        for (const { x, y, far } of places()) {
          if (less + far >= least) continue;
          const box = { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
          if (!isFree(box)) continue;
          const covered = dotsIn(box);
          const bare = less + far + DOT * covered;
          if (covered > most || bare >= least) continue;
          const cost = bare + (price?.(box) ?? 0);
          if (cost >= least) continue;
          least = cost;
          best = { content, box };
        }
      }
      if (best !== undefined) boxes.push(best.box);
      return best;
    },
  };
}
