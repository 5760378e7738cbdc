import type { Arena } from '../../../core/course/course.ts';
import type { Metres } from '../../../core/measure/quantity.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { Theme } from './inks.ts';

/** What a harrow covers in one pass, and how far apart its tines are. Usual sizes, no source. */
const PASS: Metres = 2.4;
const TINES: Metres = 0.2;
/** The lines of the tines are drawn from this many pixels apart. */
const TINES_FROM = 5;

/**
 * Raked footing: passes along the long side, every second one a little darker as the harrow came back, and from near by
 * the lines of its tines. It lies on the ground: it moves and grows with it.
 */
export function paintFooting(
  context: CanvasRenderingContext2D,
  arena: Arena,
  { camera, theme }: { readonly camera: Camera; readonly theme: Theme },
): void {
  const at = (x: number, y: number) => screenOf(camera, { x, y });
  const passes = Math.max(1, Math.round(arena.width / PASS));
  const wide = arena.width / passes;
  context.fillStyle = theme.rake;
  context.beginPath();
  for (let i = 1; i < passes; i += 2) {
    const [a, b] = [at(0, i * wide), at(arena.length, (i + 1) * wide)];
    context.rect(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.abs(b.x - a.x), Math.abs(b.y - a.y));
  }
  context.fill();
  const tines = Math.round(wide / TINES);
  if ((wide / tines) * camera.scale < TINES_FROM) return;
  context.strokeStyle = theme.rake;
  context.lineWidth = 1;
  context.setLineDash([1.9, 0.25, 0.8, 0.4].map((part) => part * camera.scale));
  for (let i = 0; i < passes * tines; i++) {
    const y = ((i + 0.5) * wide) / tines;
    // Each line begins elsewhere in its dashes: the tenth fractions of the golden section never fall in step.
    context.lineDashOffset = ((i * 0.618) % 1) * 3.35 * camera.scale;
    context.beginPath();
    line(context, at(0, y), at(arena.length, y));
    context.stroke();
  }
  context.setLineDash([]);
  context.lineDashOffset = 0;
}

function line(context: CanvasRenderingContext2D, a: Point<'screen'>, b: Point<'screen'>): void {
  context.moveTo(a.x, a.y);
  context.lineTo(b.x, b.y);
}
