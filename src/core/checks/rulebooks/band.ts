import type { Metres } from '../../measure/quantity.ts';
import type { Band } from '../check.ts';

/** A value this far outside its band still counts as inside: nobody can tape finer. In the band's own SI unit. */
export const BAND_TOLERANCE: Metres = 1e-4;

/** How many whole bands laid end to end come nearest to the value: 1 where multiples do not count. */
function wholeMultiples(band: Band, value: number): readonly number[] {
  const { least, most, multiples } = band;
  if (!multiples || least === undefined || most === undefined || least <= 0) return [1];
  const about = Math.max(1, Math.floor(value / most));
  return [about, about + 1];
}

/** Whether the value lies in the band, or in a whole multiple of it where those count. */
export function isInBand(band: Band, value: number): boolean {
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = band;
  if (value >= least - BAND_TOLERANCE && value <= most + BAND_TOLERANCE) return true;
  return wholeMultiples(band, value).some(
    (n) => value >= n * least - BAND_TOLERANCE && value <= n * most + BAND_TOLERANCE,
  );
}

/** The allowed values next to one that is not allowed: the nearest first, one below and one above where both exist. */
export function nearestAllowed(band: Band, value: number): readonly number[] {
  if (isInBand(band, value)) return [value];
  const ends = wholeMultiples(band, value).flatMap((n) => [
    ...(band.least === undefined ? [] : [n * band.least]),
    ...(band.most === undefined ? [] : [n * band.most]),
  ]);
  const below = ends.filter((end) => end < value);
  const above = ends.filter((end) => end > value);
  return [...(below.length > 0 ? [Math.max(...below)] : []), ...(above.length > 0 ? [Math.min(...above)] : [])].sort(
    (a, b) => Math.abs(a - value) - Math.abs(b - value),
  );
}
