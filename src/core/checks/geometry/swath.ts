import type { PlacedPiece } from '../../course/placed.ts';
import type { Horse } from '../../horses/horse.ts';
import type { Metres } from '../../measure/quantity.ts';
import type { Figure } from '../../pieces/piece.ts';
import { type Path, pathBounds, pathPoints } from '../../plane/path.ts';
import { distance, type Point } from '../../plane/point.ts';
import { type Bounds, type Ring, ringBounds } from '../../plane/ring.ts';
import type { LineElement } from '../../ride/line.ts';

/** Chords this long stay within half a centimetre of the tightest arc that a horse turns on. */
const STEP: Metres = 0.25;

/** A part of the line as straight chords, with the distance along it at each point. */
export interface Chords {
  readonly points: readonly Point[];
  readonly along: readonly Metres[];
  readonly bounds: Bounds;
}

const chordsCache = new WeakMap<Path, Chords>();

export function chordsOf(path: Path): Chords {
  const cached = chordsCache.get(path);
  if (cached !== undefined) return cached;
  const points = path.flatMap((stretch) =>
    // A straight is one chord, however long.
    pathPoints([stretch], stretch.curvature === 0 ? Math.max(stretch.length, STEP) : STEP),
  );
  let total = 0;
  const along = points.map((point, i) => {
    total += i === 0 ? 0 : distance(points[i - 1] ?? point, point);
    return total;
  });
  const chords = { points, along, bounds: pathBounds(path) };
  chordsCache.set(path, chords);
  return chords;
}

/** Whether the horse goes sideways there. */
function isSideways({ facing }: LineElement): boolean {
  return Math.abs(Math.sin(facing)) > 0.5;
}

/**
 * Half the width that the horse takes up across the line: its hooves against what lies on the ground or is walked on,
 * its body against what stands up. Sideways it is its length that counts.
 */
export function halfWidth(horse: Horse, element: LineElement, stands: Figure['stands']): Metres {
  if (stands === 'standing') return (isSideways(element) ? horse.bodyLength.value : horse.bodyWidth.value) / 2;
  return ((isSideways(element) ? horse.wheelbase.value : horse.stance.value) + horse.hoof.value) / 2;
}

const boundsCache = new WeakMap<Ring, Bounds>();

/** The box around a piece on the ground. */
export function pieceBounds({ footprint }: PlacedPiece): Bounds {
  const cached = boundsCache.get(footprint);
  if (cached !== undefined) return cached;
  const bounds = ringBounds(footprint);
  boundsCache.set(footprint, bounds);
  return bounds;
}

/** Answers about two things, kept for as long as both are the same objects; `because` says what else they hang on. */
export function pairCache<A extends object, B extends object, Answer>() {
  const cache = new WeakMap<A, WeakMap<B, { readonly because: string; readonly answer: Answer }>>();
  return (a: A, b: B, { because, work }: { readonly because: string; readonly work: () => Answer }): Answer => {
    const first = cache.get(a) ?? new WeakMap();
    cache.set(a, first);
    const cached = first.get(b);
    if (cached?.because === because) return cached.answer;
    const answer = work();
    first.set(b, { because, answer });
    return answer;
  };
}
