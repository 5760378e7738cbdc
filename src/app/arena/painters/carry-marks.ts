import { type CarryArrow, carryArrows } from '../../../core/change/carry-arrow.ts';
import type { ChangeOver } from '../../../core/change/change-over.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import { distance, type Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import { type Camera, type ScreenSize, screenOf } from '../camera.ts';

/** Half the height of a disc, and the width of a sign in it, pixels. */
export const DISC = 9;
const SIGN = 7;
/** So far apart numbers are, pixels. */
const AIR = 2;
/** Half of the truck's sign, pixels. */
export const TRUCK = { x: 20, y: 10 };
/** Where on its arrow a number stands, the best first. */
const ALONG = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8] as const;
/** How far aside it stands where its arrow has no room, pixels. */
const ASIDE = [0, 20, 40] as const;
/** An arrow that is shorter than this hides under its number, pixels. */
const SHORT = 34;
const AROUND = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4 - Math.PI / 2);

/** A number that would cover more of others than this, square pixels, is left out: a quarter of a disc. */
const MOST_COVERED = DISC ** 2;

/** The number of a carry, and the room that it takes on the screen. */
export interface CarryLabel {
  readonly mark: CarryArrow;
  readonly box: Bounds;
}

function placesAbout(at: Point<'screen'>): readonly Point<'screen'>[] {
  return [16, 30, 44].flatMap((far) =>
    AROUND.map((angle) => ({ x: at.x + far * Math.cos(angle), y: at.y + far * Math.sin(angle) })),
  );
}

function placesAlong(a: Point<'screen'>, b: Point<'screen'>): readonly Point<'screen'>[] {
  const long = distance(a, b);
  if (long < SHORT) return placesAbout({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const across = { x: -(b.y - a.y) / long, y: (b.x - a.x) / long };
  return ASIDE.flatMap((far) =>
    (far === 0 ? [0] : [far, -far]).flatMap((off) =>
      ALONG.map((t) => ({ x: a.x + t * (b.x - a.x) + off * across.x, y: a.y + t * (b.y - a.y) + off * across.y })),
    ),
  );
}

function places({ from, to }: CarryArrow, camera: Camera): readonly Point<'screen'>[] {
  if (from !== undefined && to !== undefined) return placesAlong(screenOf(camera, from), screenOf(camera, to));
  const only = from ?? to;
  return only === undefined ? [] : placesAbout(screenOf(camera, only));
}

/** How much of the first box, with air around it, the second covers. */
function shared(a: Bounds, b: Bounds): number {
  const width = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX) + AIR;
  const height = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY) + AIR;
  return width > 0 && height > 0 ? width * height : 0;
}

/** The box of the truck's sign on the screen. */
export function truckBox({ crew }: ChangeOver, camera: Camera): Bounds {
  const { x, y } = screenOf(camera, crew.truckAt);
  return { minX: x - TRUCK.x, maxX: x + TRUCK.x, minY: y - TRUCK.y, maxY: y + TRUCK.y };
}

/**
 * Where the numbers stand: each on its arrow or beside it, at the first place that covers nothing, otherwise where it
 * covers least. One that finds no room is left out until the picture is zoomed, or the carry is pointed at: that of the
 * `focused` carry is placed first. Cached for the last camera, because the names of the obstacles keep off them too.
 */
export const carryLabels = memoizeByIdentity(
  (plan: ChangeOver, camera: Camera, { width, height }: ScreenSize, focused: number | null): readonly CarryLabel[] => {
    const taken: Bounds[] = [truckBox(plan, camera)];
    const first = carryArrows(plan).filter(({ number }) => number === focused);
    const rest = carryArrows(plan).filter(({ number }) => number !== focused);
    return [...first, ...rest].flatMap((mark) => {
      const half = Math.max(DISC, (mark.text.length * SIGN) / 2 + 4);
      let best: Bounds | undefined;
      let least = Number.POSITIVE_INFINITY;
      for (const { x, y } of places(mark, camera)) {
        const box = { minX: x - half, maxX: x + half, minY: y - DISC, maxY: y + DISC };
        const isOut = box.minX < 0 || box.minY < 0 || box.maxX > width || box.maxY > height;
        const cost = taken.reduce((sum, other) => sum + shared(box, other), isOut ? 100 : 0);
        if (cost < least) {
          best = box;
          least = cost;
        }
        if (cost === 0) break;
      }
      if (best === undefined || (least > MOST_COVERED && mark.number !== focused)) return [];
      taken.push(best);
      return [{ mark, box: best }];
    });
  },
);
