import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { FLAT, pairOf } from './grip.ts';
import { offWallAt, wallTape } from './off-wall.ts';

/** Both ends of the piece, wherever it is gripped, the nearer to the wall first. */
function ends(held: readonly Held[]): readonly (readonly [Held, Held])[] {
  const [piece, wall] = pairOf(held, 'clear-of-wall');
  const both = [0, 1].map((at): readonly [Held, Held] => [{ ...piece, at }, wall]);
  return both.toSorted((a, b) => offWallAt(a).value - offWallAt(b).value);
}

/** What is missing to the distance: nothing, and no pull, when there is more. */
function missing(held: readonly Held[], least: number): Residual {
  const { value, gradient } = offWallAt(held);
  return value < least ? { value: value - least, gradient } : { value: 0, gradient: [FLAT, FLAT] };
}

/** All of a piece is at least so far clear of a wall; farther is free. `measure` is the distance of its nearer end. */
export const clearOfWall: ConstraintKind = {
  id: 'clear-of-wall',
  title: 'At least clear of the wall',
  unit: 'm',
  takes: ['piece', 'wall'],
  suits: ['any'],
  measure: (held) => Math.min(...ends(held).map((each) => offWallAt(each).value)),
  residuals(held, hold) {
    const [piece, wall] = pairOf(held, 'clear-of-wall');
    return [0, 1].map((at) => missing([{ ...piece, at }, wall], hold));
  },
  tape: (held) => wallTape(ends(held)[0] ?? held),
  sentence: ([piece, wall], value) => `${piece} is at least ${value} clear of ${wall}.`,
};
