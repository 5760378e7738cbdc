import { isFore, sideOf } from '../../../core/ride/footfall.ts';
import type { HoofPrint } from '../../../core/ride/hoof-print.ts';
import type { PrintNote } from '../../../core/ride/print-notes.ts';
import { plateWords, worstNotes } from '../../ride/print-words.ts';
import { screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { traceHoof } from './hoof.ts';
import { font } from './typeface.ts';

const LEAST_SIZE = 1.8;
/** Under this radius a print is a dot that only its fill tells apart: it has a fine edge. Pixels. */
const FINE = 3;
/** Below this many pixels a metre the plates would cover their own prints: the rings stay, the panel has the words. */
const PLATES_FROM = 18;
/** What happens less often than this needs no plate. */
const LEAST_TOLD = 0.01;
/** A plate stands this far beside its print, pixels. */
const ASIDE = 14;

/**
 * Paints the hoof prints: fore round, hind pointed, left full, right hollow; and those that meet a pole, with words.
 */
export function paintPrints(
  context: CanvasRenderingContext2D,
  {
    prints,
    notes,
    hoof,
  }: { readonly prints: readonly HoofPrint[]; readonly notes: readonly PrintNote[]; readonly hoof: number },
  eye: DrawContext & { readonly size: { readonly width: number; readonly height: number } },
): void {
  const { camera, theme, size } = eye;
  const radius = Math.max(LEAST_SIZE, (hoof / 2) * camera.scale);
  const left = new Path2D();
  const right = new Path2D();
  for (const print of prints) {
    const at = screenOf(camera, print.point);
    if (at.x < -9 || at.y < -9 || at.x > size.width + 9 || at.y > size.height + 9) continue;
    const angle = screenAngle(camera, print.heading);
    traceHoof(sideOf(print.foot) === 1 ? left : right, isFore(print.foot) ? 'fore' : 'hind', { at, angle, radius });
  }
  context.lineJoin = 'round';
  context.lineWidth = radius < FINE ? 0.7 : Math.min(1.6, 0.8 + radius * 0.04);
  context.strokeStyle = theme.inks.landing;
  context.fillStyle = theme.inks.landing;
  context.fill(left);
  context.stroke(left);
  context.fillStyle = theme.ground;
  context.fill(right);
  context.stroke(right);
  for (const { kind, print } of notes) {
    const at = screenOf(camera, print.point);
    context.strokeStyle = kind === 'meets' ? theme.must : theme.should;
    context.lineWidth = 2;
    context.setLineDash(kind === 'meets' ? [] : [3, 2.5]);
    context.beginPath();
    context.arc(at.x, at.y, Math.max(7, radius * 1.7), 0, 2 * Math.PI);
    context.stroke();
    context.setLineDash([]);
  }
  if (camera.scale < PLATES_FROM) return;
  plates(
    context,
    worstNotes(notes).filter(({ likelihood }) => likelihood >= LEAST_TOLD),
    eye,
  );
}

/** One plate a pole, the worst first; what would cover another is left to the table. */
function plates(context: CanvasRenderingContext2D, notes: readonly PrintNote[], { camera, theme }: DrawContext): void {
  const taken: { left: number; top: number; right: number; bottom: number }[] = [];
  context.font = font('bold');
  context.textAlign = 'left';
  context.textBaseline = 'middle';
  for (const note of notes.toSorted((a, b) => b.likelihood - a.likelihood)) {
    const at = screenOf(camera, note.print.point);
    const text = plateWords(note);
    const width = context.measureText(text).width + 12;
    const box = { left: at.x + ASIDE, top: at.y - 10, right: at.x + ASIDE + width, bottom: at.y + 10 };
    const covers = taken.some(
      (each) => box.left < each.right && box.right > each.left && box.top < each.bottom && box.bottom > each.top,
    );
    if (covers) continue;
    taken.push(box);
    context.fillStyle = theme.plate;
    context.strokeStyle = note.kind === 'meets' ? theme.must : theme.should;
    context.lineWidth = 1.4;
    context.beginPath();
    context.roundRect(box.left, box.top, width, 20, 4);
    context.fill();
    context.stroke();
    context.fillStyle = theme.inks.words;
    context.fillText(text, box.left + 6, at.y + 0.5);
  }
}
