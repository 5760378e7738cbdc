import type { Covariance } from './placement.ts';

/** The covariance of the first so many pieces. */
export function leadingPart({ count, values }: Covariance, first: number): Covariance {
  const [width, wanted] = [3 * count, 3 * first];
  const part = new Float64Array(wanted * wanted);
  for (let row = 0; row < wanted; row += 1) part.set(values.subarray(row * width, row * width + wanted), row * wanted);
  return { count: first, values: part };
}
