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

const remembered = new WeakMap<Path, Chords>();

export function chordsOf(path: Path): Chords {
  const known = remembered.get(path);
  if (known !== undefined) return known;
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
  remembered.set(path, chords);
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

const footprintBounds = new WeakMap<Ring, Bounds>();

/** The box around a piece on the ground. */
export function boundsOf({ footprint }: PlacedPiece): Bounds {
  const known = footprintBounds.get(footprint);
  if (known !== undefined) return known;
  const bounds = ringBounds(footprint);
  footprintBounds.set(footprint, bounds);
  return bounds;
}

/** Answers about two things, kept for as long as both are the same objects; `because` says what else they hang on. */
export function rememberedPairs<A extends object, B extends object, Answer>() {
  const known = new WeakMap<A, WeakMap<B, { readonly because: string; readonly answer: Answer }>>();
  return (a: A, b: B, { because, work }: { readonly because: string; readonly work: () => Answer }): Answer => {
    const first = known.get(a) ?? new WeakMap();
    known.set(a, first);
    const kept = first.get(b);
    if (kept?.because === because) return kept.answer;
    const answer = work();
    first.set(b, { because, answer });
    return answer;
  };
}
