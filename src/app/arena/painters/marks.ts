import type { Ink, Mark } from '../../../core/plane/mark.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { Theme } from './inks.ts';
import { font, LETTERS } from './typeface.ts';

/** Smallest and largest letters on the screen, pixels. */
const LEAST_LETTER = LETTERS;
const MOST_LETTER = 30;
/** Wooden things are never drawn thinner than this, so that a pole stays visible in a large arena. Pixels. */
const LEAST_TIMBER = 1.6;

/** Paints marks on the ground through the camera. Words stay upright. */
export function paintMarks(
  context: CanvasRenderingContext2D,
  marks: readonly Mark[],
  { camera, theme }: { readonly camera: Camera; readonly theme: Theme },
): void {
  for (const mark of marks) {
    const colour = theme.inks[mark.ink];
    switch (mark.kind) {
      case 'line': {
        trace(context, mark.points, camera);
        context.strokeStyle = colour;
        context.lineWidth = mark.width === undefined ? hairline(camera) : Math.max(1, mark.width * camera.scale);
        context.setLineDash((mark.dash ?? []).map((length) => length * camera.scale));
        context.lineJoin = 'round';
        context.stroke();
        context.setLineDash([]);
        break;
      }
      case 'area': {
        trace(context, mark.ring, camera);
        context.closePath();
        context.fillStyle = colour;
        context.fill();
        if (isThin(mark.ink)) {
          context.strokeStyle = colour;
          context.lineWidth = LEAST_TIMBER;
          context.stroke();
        }
        break;
      }
      case 'disc': {
        const at = screenOf(camera, mark.at);
        context.beginPath();
        context.arc(at.x, at.y, Math.max(1.5, mark.radius * camera.scale), 0, 2 * Math.PI);
        if (mark.fill === 'full') {
          context.fillStyle = colour;
          context.fill();
        } else {
          context.strokeStyle = colour;
          context.lineWidth = 1;
          context.stroke();
        }
        break;
      }
      case 'words':
        paintWords(context, mark, { camera, theme });
    }
  }
}

/** A hairline is a pixel, and less where a pixel would be as thick as what it bounds. */
function hairline(camera: Camera): number {
  return Math.min(1, Math.max(0.8, camera.scale / 25));
}

function isThin(ink: Ink): boolean {
  return ink === 'timber' || ink === 'metal' || ink === 'marker';
}

/** Begins a path along points on the ground. */
export function trace(context: CanvasRenderingContext2D, points: readonly Point[], camera: Camera): void {
  context.beginPath();
  points.forEach((each, index) => {
    const at = screenOf(camera, each);
    if (index === 0) context.moveTo(at.x, at.y);
    else context.lineTo(at.x, at.y);
  });
}

function paintWords(
  context: CanvasRenderingContext2D,
  mark: Extract<Mark, { kind: 'words' }>,
  { camera, theme }: { readonly camera: Camera; readonly theme: Theme },
): void {
  const at = screenOf(camera, mark.at);
  const size = Math.min(MOST_LETTER, Math.max(LEAST_LETTER, mark.size * camera.scale));
  context.font = font(mark.weight ?? 'regular', size);
  context.textBaseline = 'middle';
  context.textAlign = mark.align === 'middle' ? 'center' : mark.align;
  const width = context.measureText(mark.text).width;
  const left = mark.align === 'start' ? at.x : mark.align === 'end' ? at.x - width : at.x - width / 2;
  if (mark.backing !== undefined) {
    context.fillStyle = theme.plate;
    context.beginPath();
    context.roundRect(left - 4, at.y - size / 2 - 3, width + 8, size + 6, mark.backing === 'disc' ? size : 4);
    context.fill();
  }
  context.fillStyle = theme.inks[mark.ink];
  context.fillText(mark.text, at.x, at.y + 0.5);
}
