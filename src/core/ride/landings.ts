import type { Sourced } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Landings } from './line.ts';

/** How often a horse comes down in a gap, and what each landing covers. */
export type Spacing = Omit<Landings, 'places'>;

/** Rounding that a gap of exactly n landings may carry, metres. */
const ROUNDING: Metres = 1e-9;

/**
 * A gap of D metres takes n landings of a band [a, b] when n·a ≤ D ≤ n·b. Where none fits, n is the one whose even
 * landing is nearest to what the horse does, and the nearest gaps that fit are named. Throws for an empty band.
 */
export function spacing(gap: Metres, landing: Sourced): Spacing {
  const least = landing.least ?? landing.value;
  const most = landing.most ?? landing.value;
  if (!(least > 0 && most >= least)) throw new Error(`spacing: a landing covers more than 0, got ${least} … ${most}`);
  const fewest = Math.max(1, Math.ceil((gap - ROUNDING) / most));
  const mostOften = Math.floor((gap + ROUNDING) / least);
  if (fewest <= mostOften) {
    const usual = Math.round(gap / landing.value);
    const count = Math.min(mostOften, Math.max(fewest, usual));
    return { count, each: gap / count, fits: true, nearest: [] };
  }
  // Between n landings at their longest and n + 1 at their shortest.
  const longer = fewest * least;
  const shorter = (fewest - 1) * most;
  const count = fewest > 1 && gap - shorter < longer - gap ? fewest - 1 : fewest;
  return { count, each: gap / count, fits: false, nearest: shorter > 0 ? [shorter, longer] : [longer] };
}

/** Where they are, as fractions of the gap: even, half a landing in from either end. */
export function landingFractions(count: number): number[] {
  return Array.from({ length: count }, (_, i) => (i + 0.5) / count);
}
