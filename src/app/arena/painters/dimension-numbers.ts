import { type DimensionLabel, LABEL_HEIGHT } from '../overlays/dimension-places.ts';
import type { DrawContext } from './draw-context.ts';
import { font } from './typeface.ts';

/** The numbers of dimensions while something is dragged, where at rest their fields stand over the picture. */
export function paintDimensionNumbers(
  context: CanvasRenderingContext2D,
  labels: readonly DimensionLabel[],
  { theme }: Pick<DrawContext, 'theme'>,
): void {
  context.font = font('bold');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.lineWidth = 1.5;
  for (const { at, width, text, kept } of labels) {
    context.beginPath();
    context.roundRect(at.x - width / 2, at.y - LABEL_HEIGHT / 2, width, LABEL_HEIGHT, 3);
    context.fillStyle = theme.plate;
    context.fill();
    context.strokeStyle = theme.chosen;
    context.setLineDash(kept.holds ? [] : [4, 3]);
    context.stroke();
    context.fillStyle = kept.holds ? theme.chosen : theme.inks.words;
    context.fillText(text, at.x, at.y + 0.5);
  }
  context.setLineDash([]);
}
