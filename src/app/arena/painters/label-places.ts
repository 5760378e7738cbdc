import type { Point } from '../../../core/plane/point.ts';
import { type Bounds, unionBounds } from '../../../core/plane/ring.ts';

/** A label that wants to stand beside a box, all in pixels. */
export interface LabelRequest {
  readonly box: Bounds;
  readonly width: number;
  readonly height: number;
}

const AWAY = 6;
const STEPS = [AWAY, AWAY + 14, AWAY + 30];

/**
 * Where each label stands so that it covers as little as possible: beside its box, off the other boxes, the labels placed
 * before it, the dots (samples of the line) and what is `kept` free. Answers the middle of each label.
 */
export function labelPlaces(
  requests: readonly LabelRequest[],
  dots: readonly Point<'screen'>[],
  { room, kept = [] }: { readonly room: Bounds; readonly kept?: readonly Bounds[] },
): readonly Point<'screen'>[] {
  const taken: Bounds[] = [...kept];
  return requests.map((request) => {
    let best: Bounds | undefined;
    let least = Number.POSITIVE_INFINITY;
    const places = placesAround(request);
    // Most of what could be covered is far from all of these places, which are many.
    const around = places.map(({ box }) => box).reduce(unionBounds);
    const others = requests.flatMap((each) => (each !== request && shared(around, each.box) > 0 ? [each.box] : []));
    const near = dots.filter((dot) => isIn(around, dot));
    const nearTaken = taken.filter((each) => shared(around, each) > 0);
    for (const place of places) {
      const price =
        6 * sum(nearTaken, (each) => shared(place.box, each)) +
        2 * sum(others, (each) => shared(place.box, each)) +
        2.5 * shared(place.box, request.box) +
        70 * near.filter((dot) => isIn(place.box, dot)).length +
        8 * (area(place.box) - shared(place.box, room)) +
        place.far;
      if (price < least) {
        least = price;
        best = place.box;
      }
    }
    const box = best ?? request.box;
    taken.push(box);
    return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  });
}

function placesAround(request: LabelRequest): { box: Bounds; far: number }[] {
  const { box } = request;
  const midX = (box.minX + box.maxX) / 2;
  const midY = (box.minY + box.maxY) / 2;
  return STEPS.flatMap((away) => {
    const left = box.minX - away - request.width / 2;
    const right = box.maxX + away + request.width / 2;
    const above = box.minY - away - request.height / 2;
    const below = box.maxY + away + request.height / 2;
    const middles: readonly (readonly [number, number])[] = [
      [midX, above],
      [midX, below],
      [left, midY],
      [right, midY],
      [box.minX + request.width / 2, above],
      [box.maxX - request.width / 2, above],
      [box.minX + request.width / 2, below],
      [box.maxX - request.width / 2, below],
      [left, above],
      [right, above],
      [left, below],
      [right, below],
    ];
    return middles.map(([x, y], index) => ({ box: boxAbout(x, y, request), far: away + index }));
  });
}

function boxAbout(x: number, y: number, { width, height }: LabelRequest): Bounds {
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - height / 2, maxY: y + height / 2 };
}

function shared(a: Bounds, b: Bounds): number {
  const width = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const height = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return width > 0 && height > 0 ? width * height : 0;
}

function area(box: Bounds): number {
  return (box.maxX - box.minX) * (box.maxY - box.minY);
}

function isIn(box: Bounds, dot: Point<'screen'>): boolean {
  return dot.x >= box.minX && dot.x <= box.maxX && dot.y >= box.minY && dot.y <= box.maxY;
}

function sum<T>(list: readonly T[], of: (each: T) => number): number {
  return list.reduce((total, each) => total + of(each), 0);
}
