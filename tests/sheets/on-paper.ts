import type { Point } from '../../src/core/plane/point.ts';
import type { Pages, PaperDrawing } from '../../src/sheets/sheet.ts';

/** The drawing that a sheet says it has. Throws where it has none. */
export function drawingOf({ title, drawing }: Pages): PaperDrawing {
  if (drawing === undefined) throw new Error(`${title} has no drawing`);
  return drawing;
}

/** Where a sheet promises a point of the ground to be on its first page, mm: worked out apart from the sheet's own code. */
export function onPaper(pages: Pages, { x, y }: Point): { readonly x: number; readonly y: number } {
  const { origin, scale } = drawingOf(pages);
  const k = 1000 / scale;
  return origin.turned ? { x: origin.x - y * k, y: origin.y - x * k } : { x: origin.x + x * k, y: origin.y - y * k };
}
