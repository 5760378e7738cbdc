import type { Arena } from '../../../core/course/course.ts';
import type { LengthUnit } from '../../../core/measure/quantity.ts';
import { FOOT } from '../../../core/measure/quantity.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Camera, screenOf } from '../camera.ts';
import { paintFooting } from './footing.ts';
import type { Theme } from './inks.ts';
import { paintRail } from './rail.ts';
import { rulerMarks } from './rulers.ts';
import { font } from './typeface.ts';

interface GroundDrawing {
  readonly arena: Arena;
  readonly unit: LengthUnit;
  readonly camera: Camera;
  readonly theme: Theme;
  /** Whether the grid is shown: while something moves or is measured. Absent: it is not. */
  readonly hasGrid?: boolean;
}

/** Paints the ground: raked footing, the grid when it is wanted, the rail with the way in, and numbers along two walls. */
export function paintGround(
  context: CanvasRenderingContext2D,
  { arena, unit, camera, theme, hasGrid }: GroundDrawing,
): void {
  const low = screenOf(camera, { x: 0, y: 0 });
  const high = screenOf(camera, { x: arena.length, y: arena.width });
  const [left, top] = [Math.min(low.x, high.x), Math.min(low.y, high.y)];
  context.fillStyle = theme.ground;
  context.fillRect(left, top, Math.abs(high.x - low.x), Math.abs(high.y - low.y));
  paintFooting(context, arena, { camera, theme });
  if (hasGrid === true) paintGrid(context, { arena, unit, camera, theme });
  paintRail(context, arena, { camera, theme });
  paintRulers(context, { arena, unit, camera, theme });
}

function paintGrid(context: CanvasRenderingContext2D, { arena, unit, camera, theme }: GroundDrawing): void {
  const at = (x: number, y: number) => screenOf(camera, { x, y });
  const step = unit === 'ft' ? 10 * FOOT : 5;
  context.strokeStyle = theme.grid;
  context.lineWidth = 1;
  context.beginPath();
  for (let x = step; x < arena.length - 1e-6; x += step) segment(context, at(x, 0), at(x, arena.width));
  for (let y = step; y < arena.width - 1e-6; y += step) segment(context, at(0, y), at(arena.length, y));
  context.stroke();
}

function segment(context: CanvasRenderingContext2D, a: Point<'screen'>, b: Point<'screen'>): void {
  context.moveTo(Math.round(a.x) + 0.5, Math.round(a.y) + 0.5);
  context.lineTo(Math.round(b.x) + 0.5, Math.round(b.y) + 0.5);
}

function paintRulers(context: CanvasRenderingContext2D, { arena, unit, camera, theme }: GroundDrawing): void {
  context.font = font('regular');
  context.textBaseline = 'middle';
  context.textAlign = 'center';
  context.fillStyle = theme.ruler;
  for (const { text, box } of rulerMarks(arena, unit, camera)) {
    context.fillText(text, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 + 0.5);
  }
}
