import type { PlacedPiece } from '../course/placed.ts';
import { isSmall } from './observables.ts';

/** A, B … Z, AA, AB … */
function letter(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : `${letter(Math.floor(index / 26) - 1)}${last}`;
}

/** The letters of the ends of long pieces in the order of laying: `[at 0, at 1]` by piece key. Small things have none. */
export function endLetters(pieces: readonly PlacedPiece[]): ReadonlyMap<string, readonly [string, string]> {
  const long = pieces.filter((piece) => !isSmall(piece));
  return new Map(long.map(({ key }, i) => [key, [letter(2 * i), letter(2 * i + 1)]]));
}
