import { lerp, type Point } from '../../../core/plane/point.ts';
import { type Bounds, unionBounds } from '../../../core/plane/ring.ts';
import type { KeptConstraint } from '../../../desk/constraints/kept-list.ts';
import { type Camera, type ScreenSize, screenOf } from '../camera.ts';
import { textWidth } from '../painters/typeface.ts';

/** The number of a dimension, where it stands on the screen. */
export interface DimensionLabel {
  readonly kept: KeptConstraint;
  /** The constraints that a number typed here is for. */
  readonly keys: readonly string[];
  readonly text: string;
  /** The middle of the label, and of the tape that it is about, pixels. */
  readonly at: Point<'screen'>;
  readonly foot: Point<'screen'>;
  readonly width: number;
}

export const LABEL_HEIGHT = 22;
/** What stands round the text, pixels. */
const ROUND = 14;
/** Ground left between two labels. */
const APART = 3;
/** How far from its tape a label may stand, pixels. */
const STEPS = [0, 16, 26, 38, 52, 70, 92];

interface DimensionLabelRequest {
  readonly kept: KeptConstraint;
  readonly keys: readonly string[];
  readonly text: string;
  readonly dimension: readonly [Point<'screen'>, Point<'screen'>];
  readonly width: number;
}

function boxAt({ x, y }: Point<'screen'>, width: number): Bounds {
  const [w, h] = [width / 2, LABEL_HEIGHT / 2];
  return { minX: x - w, maxX: x + w, minY: y - h, maxY: y + h };
}

export function labelBox({ at, width }: Pick<DimensionLabel, 'at' | 'width'>): Bounds {
  return boxAt(at, width);
}

function isOverlapping(a: Bounds, b: Bounds): boolean {
  const clear = a.maxX + APART <= b.minX || b.maxX + APART <= a.minX;
  return !clear && !(a.maxY + APART <= b.minY || b.maxY + APART <= a.minY);
}

function isIn(box: Bounds, { x, y }: Point<'screen'>): boolean {
  return x > box.minX && x < box.maxX && y > box.minY && y < box.maxY;
}

function widthOf(text: string): number {
  return textWidth(text, 'bold') + ROUND;
}

function middle([from, to]: DimensionLabelRequest['dimension']): Point<'screen'> {
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

/** One label for each dimension, or one for several where they would cover one another. */
function labelRequests(kept: KeptConstraint, camera: Camera): readonly DimensionLabelRequest[] {
  const tapes = kept.dimensions.map(([from, to]) => [screenOf(camera, from), screenOf(camera, to)] as const);
  const width = widthOf(kept.text);
  const single = tapes.map((tape, i): DimensionLabelRequest => {
    const key = kept.keys[i];
    return { kept, keys: key === undefined ? kept.keys : [key], text: kept.text, dimension: tape, width };
  });
  const boxes = single.map((each) => boxAt(middle(each.dimension), width));
  const isDense = boxes.some((box, i) => boxes.some((other, j) => j > i && isOverlapping(box, other)));
  const centre = tapes[Math.floor((tapes.length - 1) / 2)];
  if (!isDense || centre === undefined) return single;
  const text = `${tapes.length} × ${kept.text}`;
  return [{ kept, keys: kept.keys, text, dimension: centre, width: widthOf(text) }];
}

/** Positions for a label: on its dimension line, then square to it and along it, farther and farther. */
function placesFor({ dimension: [from, to], width }: DimensionLabelRequest): readonly Point<'screen'>[] {
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
 * Where the numbers of dimensions stand: near their lines, off one another and off what is `taken`, over as few `dots`
 * (samples of the poles) as possible. One that finds no place is left out: it is in the list beside the arena.
 */
export function dimensionLabels(
  kept: readonly KeptConstraint[],
  camera: Camera,
  {
    size,
    dots,
    taken,
  }: { readonly size: ScreenSize; readonly dots: readonly Point<'screen'>[]; readonly taken: readonly Bounds[] },
): readonly DimensionLabel[] {
  const boxes = [...taken];
  return kept
    .flatMap((each) => labelRequests(each, camera))
    .flatMap((request): DimensionLabel[] => {
      const foot = middle(request.dimension);
      let best: Point<'screen'> | undefined;
      let least = Number.POSITIVE_INFINITY;
      const places = placesFor(request);
      const around = places.map((at) => boxAt(at, request.width)).reduce(unionBounds);
      const near = dots.filter((dot) => isIn(around, dot));
      const rivals = boxes.filter((each) => isOverlapping(each, around));
      for (const at of places) {
        const box = boxAt(at, request.width);
        const isInside = box.minX > 2 && box.minY > 2 && box.maxX < size.width - 2 && box.maxY < size.height - 2;
        if (!isInside || rivals.some((each) => isOverlapping(each, box))) continue;
        const covered = near.filter((dot) => isIn(box, dot)).length;
        const cost = 2 * covered + 0.12 * Math.hypot(at.x - foot.x, at.y - foot.y);
        if (cost >= least) continue;
        least = cost;
        best = at;
      }
      if (best === undefined) return [];
      boxes.push(boxAt(best, request.width));
      const { kept: what, keys, text, width } = request;
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
