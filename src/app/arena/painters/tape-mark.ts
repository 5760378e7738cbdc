import type { Point } from '../../../core/plane/point.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { Theme } from './inks.ts';

/** Paints the tape between two near faces, with a tick at each end. */
export function paintGap(
  context: CanvasRenderingContext2D,
  [from, to]: readonly [Point, Point],
  { camera, theme }: { readonly camera: Camera; readonly theme: Theme },
): void {
  const a = screenOf(camera, from);
  const b = screenOf(camera, to);
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [x, y] = [(-(b.y - a.y) / long) * 9, ((b.x - a.x) / long) * 9];
  context.lineCap = 'round';
  for (const [width, colour] of [
    [9, theme.pointed],
    [2.5, theme.inks.words],
  ] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    context.beginPath();
    context.moveTo(a.x, a.y);
    context.lineTo(b.x, b.y);
    for (const end of [a, b]) {
      context.moveTo(end.x - x, end.y - y);
      context.lineTo(end.x + x, end.y + y);
    }
    context.stroke();
  }
}
