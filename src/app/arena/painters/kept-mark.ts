import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import type { KeptConstraint } from '../../../desk/constraints/kept-list.ts';
import type { TapeReading } from '../../../desk/measuring/tape.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { DimensionLabel } from '../overlays/dimension-places.ts';
import type { DrawContext } from './draw-context.ts';
import { font, textWidth } from './typeface.ts';

const TICK = 4.5;

function paintDimensionLine(
  context: CanvasRenderingContext2D,
  [from, to]: readonly [Point, Point],
  camera: Camera,
): void {
  const [a, b] = [screenOf(camera, from), screenOf(camera, to)];
  const long = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [x, y] = [(-(b.y - a.y) / long) * TICK, ((b.x - a.x) / long) * TICK];
  context.beginPath();
  context.moveTo(a.x, a.y);
  context.lineTo(b.x, b.y);
  for (const end of [a, b]) {
    context.moveTo(end.x - x, end.y - y);
    context.lineTo(end.x + x, end.y + y);
  }
  context.stroke();
}

/**
 * Paints the dimensions of constraints, and a leader line from each number that stands aside. Reference dimensions are
 * dashed.
 */
export function paintKept(
  context: CanvasRenderingContext2D,
  kept: readonly KeptConstraint[],
  { camera, theme, labels }: DrawContext & { readonly labels: readonly DimensionLabel[] },
): void {
  context.strokeStyle = theme.inks.measure;
  context.lineCap = 'butt';
  for (const each of kept) {
    context.lineWidth = 1.6;
    context.setLineDash(each.holds ? [] : [4, 3]);
    for (const tape of each.dimensions) paintDimensionLine(context, tape, camera);
  }
  context.setLineDash([]);
  context.lineWidth = 0.8;
  context.globalAlpha = 0.7;
  for (const { at, foot } of labels) {
    if (Math.hypot(at.x - foot.x, at.y - foot.y) < 14) continue;
    context.beginPath();
    context.moveTo(foot.x, foot.y);
    context.lineTo(at.x, at.y);
    context.stroke();
  }
  context.globalAlpha = 1;
}

/** Where the number of the tape stands: on it, or beside one that is short. */
export function tapeReadingPlate({ tape, text }: Pick<TapeReading, 'tape' | 'text'>, camera: Camera): Bounds {
  const [a, b] = [screenOf(camera, tape[0]), screenOf(camera, tape[1])];
  const width = textWidth(text, 'bold') + 16;
  const aside = Math.hypot(b.x - a.x, b.y - a.y) < width + 12 ? 22 : 0;
  const [x, y] = [(a.x + b.x) / 2, (a.y + b.y) / 2 - aside];
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - 11, maxY: y + 11 };
}

/** The tape: a broad band with its reading on a plate. */
export function paintTapeReading(
  context: CanvasRenderingContext2D,
  { tape, text }: Pick<TapeReading, 'tape' | 'text'>,
  { camera, theme }: DrawContext,
): void {
  context.lineCap = 'round';
  for (const [width, colour] of [
    [6, theme.plate],
    [2.4, theme.guide],
  ] as const) {
    context.lineWidth = width;
    context.strokeStyle = colour;
    paintDimensionLine(context, tape, camera);
  }
  const { minX, maxX, minY, maxY } = tapeReadingPlate({ tape, text }, camera);
  const [x, y, width] = [(minX + maxX) / 2, (minY + maxY) / 2, maxX - minX];
  context.font = font('bold');
  context.fillStyle = theme.plate;
  context.strokeStyle = theme.guide;
  context.lineWidth = 1.4;
  context.beginPath();
  context.roundRect(x - width / 2, y - 11, width, 22, 5);
  context.fill();
  context.stroke();
  context.fillStyle = theme.inks.words;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(text, x, y + 0.5);
}

/** A spot to which one end of the tape is attached while the other follows the pointer. */
export function paintTapeEnd(context: CanvasRenderingContext2D, at: Point, { camera, theme }: DrawContext): void {
  const { x, y } = screenOf(camera, at);
  context.beginPath();
  context.arc(x, y, 6, 0, 2 * Math.PI);
  context.lineWidth = 2.4;
  context.strokeStyle = theme.guide;
  context.stroke();
}

/** A peg through each fixed piece: a driven stake seen from above, with its split head. */
export function paintPins(context: CanvasRenderingContext2D, survey: Survey, { camera, theme }: DrawContext): void {
  for (const { piece, pose } of survey.pieces) {
    if (!piece.fixed) continue;
    const { x, y } = screenOf(camera, pose);
    context.beginPath();
    context.roundRect(x - 6, y - 6, 12, 12, 3.5);
    context.fillStyle = theme.plate;
    context.fill();
    context.lineWidth = 2;
    context.strokeStyle = theme.inks.words;
    context.stroke();
    context.beginPath();
    context.moveTo(x - 3, y + 3);
    context.lineTo(x + 3, y - 3);
    context.lineWidth = 2.4;
    context.stroke();
  }
}
