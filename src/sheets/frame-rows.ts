/** Frames in rows on a page. */
import type { PaperPoint } from './paper-transform.ts';

/** Between frames, mm. */
export const BETWEEN = 3;

export interface Sized {
  readonly width: number;
  readonly height: number;
}

/** Frames in rows no wider than `width`: the upper left corner of each, and how high they are together. */
export function rowsOf(
  sizes: readonly Sized[],
  width: number,
): { readonly at: readonly PaperPoint[]; readonly height: number } {
  let [x, y, tallest] = [0, 0, 0];
  const at = sizes.map((size) => {
    if (x > 0 && x + size.width > width) [x, y, tallest] = [0, y + tallest + BETWEEN, 0];
    const place = { x, y };
    x += size.width + BETWEEN;
    tallest = Math.max(tallest, size.height);
    return place;
  });
  return { at, height: y + tallest };
}
