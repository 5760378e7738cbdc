import { lerp, type Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Kept } from '../../../desk/constraints/kept-list.ts';
import { type Camera, type Size, screenOf } from '../camera.ts';

/** The number on a tape, where it stands on the screen. */
export interface TapeLabel {
  readonly kept: Kept;
  /** The constraints that a number typed here is for. */
  readonly keys: readonly string[];
  readonly text: string;
  /** The middle of the label, and of the tape that it is about, pixels. */
  readonly at: Point<'screen'>;
  readonly foot: Point<'screen'>;
  readonly width: number;
}

export const LABEL_HEIGHT = 22;
/** Width of a figure at the label's size, and what stands round the text. Pixels. */
const FIGURE = 7.2;
const ROUND = 14;
/** Ground left between two labels. */
const APART = 3;
/** How far from its tape a label may stand, pixels. */
const STEPS = [0, 16, 26, 38, 52, 70, 92];

interface Wish {
  readonly kept: Kept;
  readonly keys: readonly string[];
  readonly text: string;
  readonly tape: readonly [Point<'screen'>, Point<'screen'>];
  readonly width: number;
}

function boxAt({ x, y }: Point<'screen'>, width: number): Bounds {
  const [w, h] = [width / 2, LABEL_HEIGHT / 2];
  return { minX: x - w, maxX: x + w, minY: y - h, maxY: y + h };
}

export function labelBox({ at, width }: Pick<TapeLabel, 'at' | 'width'>): Bounds {
  return boxAt(at, width);
}

function meet(a: Bounds, b: Bounds): boolean {
  const clear = a.maxX + APART <= b.minX || b.maxX + APART <= a.minX;
  return !clear && !(a.maxY + APART <= b.minY || b.maxY + APART <= a.minY);
}

function widthOf(text: string): number {
  return text.length * FIGURE + ROUND;
}

function middle([from, to]: Wish['tape']): Point<'screen'> {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** One label for each tape of what is kept, or one for all where they would cover one another. */
function wishesOf(kept: Kept, camera: Camera): readonly Wish[] {
  const tapes = kept.tapes.map(([from, to]) => [screenOf(camera, from), screenOf(camera, to)] as const);
  const width = widthOf(kept.text);
  const single = tapes.map((tape, i): Wish => {
    const key = kept.keys[i];
    return { kept, keys: key === undefined ? kept.keys : [key], text: kept.text, tape, width };
  });
  const boxes = single.map((each) => boxAt(middle(each.tape), width));
  const isDense = boxes.some((box, i) => boxes.some((other, j) => j > i && meet(box, other)));
  const centre = tapes[Math.floor((tapes.length - 1) / 2)];
  if (!isDense || centre === undefined) return single;
  const text = `${tapes.length} × ${kept.text}`;
  return [{ kept, keys: kept.keys, text, tape: centre, width: widthOf(text) }];
}

/** Places for a label: on its tape, then square to it and along it, farther and farther. */
function placesFor({ tape: [from, to], width }: Wish): readonly Point<'screen'>[] {
  const at = middle([from, to]);
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  const [ux, uy] = long < 1 ? [1, 0] : [(to.x - from.x) / long, (to.y - from.y) / long];
  return STEPS.flatMap((step) => {
    if (step === 0) return [at];
    const [square, along] = [step + (Math.abs(uy) * width) / 3, step + (Math.abs(ux) * width) / 2];
    return [
      { x: at.x - uy * square, y: at.y + ux * square },
      { x: at.x + uy * square, y: at.y - ux * square },
      { x: at.x + ux * along, y: at.y + uy * along },
      { x: at.x - ux * along, y: at.y - uy * along },
    ];
  });
}

/**
 * Where the numbers of what is kept stand: near their tapes, off one another and off what is `taken`, over as few `dots`
 * (samples of the poles) as possible. One that finds no place is left out: it is in the list beside the arena.
 */
export function tapeLabels(
  kept: readonly Kept[],
  camera: Camera,
  {
    size,
    dots,
    taken,
  }: { readonly size: Size; readonly dots: readonly Point<'screen'>[]; readonly taken: readonly Bounds[] },
): readonly TapeLabel[] {
  const boxes = [...taken];
  return kept
    .flatMap((each) => wishesOf(each, camera))
    .flatMap((wish): TapeLabel[] => {
      const foot = middle(wish.tape);
      let best: Point<'screen'> | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const at of placesFor(wish)) {
        const box = boxAt(at, wish.width);
        const isInside = box.minX > 2 && box.minY > 2 && box.maxX < size.width - 2 && box.maxY < size.height - 2;
        if (!isInside || boxes.some((each) => meet(each, box))) continue;
        const covered = dots.filter(({ x, y }) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY).length;
        const price = 2 * covered + 0.12 * Math.hypot(at.x - foot.x, at.y - foot.y);
        if (price >= least) continue;
        least = price;
        best = at;
      }
      if (best === undefined) return [];
      boxes.push(boxAt(best, wish.width));
      const { kept: what, keys, text, width } = wish;
      return [{ kept: what, keys, text, at: best, foot, width }];
    });
}

/** Samples along the middle of pieces, pixels. */
export function poleDots(
  pieces: readonly {
    readonly pose: { readonly x: number; readonly y: number; readonly angle: number };
    readonly figure: { readonly length: number };
  }[],
  camera: Camera,
): readonly Point<'screen'>[] {
  return pieces.flatMap(({ pose, figure }) => {
    const [c, s] = [(Math.cos(pose.angle) * figure.length) / 2, (Math.sin(pose.angle) * figure.length) / 2];
    const [a, b] = [
      { x: pose.x - c, y: pose.y - s },
      { x: pose.x + c, y: pose.y + s },
    ];
    const count = Math.max(1, Math.round((figure.length * camera.scale) / 4));
    return Array.from({ length: count + 1 }, (_, i) => screenOf(camera, lerp(a, b, i / count)));
  });
}
