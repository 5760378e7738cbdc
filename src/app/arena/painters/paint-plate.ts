import type { Bounds } from '../../../core/plane/ring.ts';
import type { DrawContext } from './draw-context.ts';

/** Words on a plate, in the middle of a box in screen pixels; the font is set before. */
export function paintPlate(
  context: CanvasRenderingContext2D,
  { minX, minY, maxX, maxY }: Bounds,
  words: string,
  { theme }: Pick<DrawContext, 'theme'>,
): void {
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = theme.plate;
  context.beginPath();
  context.roundRect(minX, minY, maxX - minX, maxY - minY, 3);
  context.fill();
  context.fillStyle = theme.inks.words;
  context.fillText(words, (minX + maxX) / 2, (minY + maxY) / 2 + 0.5);
}
