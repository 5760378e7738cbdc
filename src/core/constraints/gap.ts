import type { ConstraintKind, Held, Residual } from './constraint.ts';
import { holdOf, pairOf, residual, slope } from './grip.ts';

/** A tape that meets a pole flatter than this (cosine to its normal, about 84°) measures no gap. */
const FLATTEST = 0.1;

/**
 * The taped gap and its derivative: the straight tape through the two gripped axis points, from near face to near face:
 * c − t₁/(2·cos α₁) − t₂/(2·cos α₂) with c the chord and αᵢ its angle to the normal of pole i (DESIGN, geometry).
 *
 * `side` says on which side of the first pole the second lies (1: its +y side). On the wrong side, or with the tape nearly
 * along a pole, the distance square to the first pole stands in: it falls below any gap there, so the solver is always
 * pushed back to the side that was meant.
 */
function taped(held: readonly Held[], side: 1 | -1): Residual {
  const [first, second] = pairOf(held, 'gap');
  const a = holdOf(first);
  const b = holdOf(second);
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = Math.hypot(dx, dy);
  // Normals that look along the tape when both poles are where they should be.
  const ax = -a.uy * side;
  const ay = a.ux * side;
  const square1 = ax * dx + ay * dy;
  const facing = b.ux * dy - b.uy * dx < 0 ? -1 : 1;
  const bx = -b.uy * facing;
  const by = b.ux * facing;
  const square2 = bx * dx + by * dy;
  const spin1 = -side * (a.ux * dx + a.uy * dy);
  const spin2 = -facing * (b.ux * dx + b.uy * dy);
  if (square1 < FLATTEST * chord || square2 < FLATTEST * chord || chord === 0) {
    const value = square1 - (first.width + second.width) / 2;
    return residual(value, slope(a, -ax, -ay, spin1), slope(b, ax, ay));
  }
  const half1 = first.width / 2;
  const half2 = second.width / 2;
  const value = chord - (half1 * chord) / square1 - (half2 * chord) / square2;
  const byChord = 1 - half1 / square1 - half2 / square2;
  const bySquare1 = (half1 * chord) / square1 ** 2;
  const bySquare2 = (half2 * chord) / square2 ** 2;
  const gx = (byChord * dx) / chord + bySquare1 * ax + bySquare2 * bx;
  const gy = (byChord * dy) / chord + bySquare1 * ay + bySquare2 * by;
  return residual(value, slope(a, -gx, -gy, bySquare1 * spin1), slope(b, gx, gy, bySquare2 * spin2));
}

/** The gap between two poles, inside to inside, at a fraction along each. */
export const gap: ConstraintKind = {
  id: 'gap',
  title: 'Gap, inside to inside',
  unit: 'm',
  takes: ['piece', 'piece'],
  measure: (held, side) => taped(held, side).value,
  residuals(held, hold, side) {
    const now = taped(held, side);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  sentence: ([first, second], value) => `The gap between ${first} and ${second} is ${value}, inside to inside.`,
};
