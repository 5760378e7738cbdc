import type { Horse } from '../../../core/horses/horse.ts';
import type { Pose } from '../../../core/plane/pose.ts';
import { isFore } from '../../../core/ride/footfall.ts';
import type { FootPlace } from '../../ride/feet.ts';
import { screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { hoofShape } from './hoof.ts';

/** The outline of the left half of a horse from above, tail to poll, in trunk lengths and widths; +x is forward. */
const HALF: readonly (readonly [number, number])[] = [
  [-0.52, 0.1],
  [-0.42, 0.46],
  [-0.22, 0.5],
  [0, 0.42],
  [0.2, 0.45],
  [0.4, 0.4],
  [0.52, 0.2],
];
/** Neck and head reach this far before the chest, trunk lengths. */
const NECK = 0.34;
const HEAD = 0.3;

/** Paints the horse from above, to scale: body, neck, head, and its four feet on the ground. */
export function paintHorse(
  context: CanvasRenderingContext2D,
  { pose, feet, horse }: { readonly pose: Pose; readonly feet: readonly FootPlace[]; readonly horse: Horse },
  { camera, theme }: DrawContext,
): void {
  const at = screenOf(camera, pose);
  const long = horse.bodyLength.value * camera.scale;
  const wide = horse.bodyWidth.value * camera.scale;
  context.save();
  context.translate(at.x, at.y);
  context.fillStyle = theme.pointed;
  context.globalAlpha = 0.3;
  context.beginPath();
  context.arc(0, 0, Math.max(18, long * 0.9), 0, 2 * Math.PI);
  context.fill();
  context.globalAlpha = 1;
  context.rotate(screenAngle(camera, pose.angle));
  context.lineJoin = 'round';
  context.lineWidth = Math.max(1.2, wide * 0.06);
  context.strokeStyle = theme.disc;
  context.fillStyle = theme.inks.timber;
  tail(context, long, wide);
  neck(context, long, wide);
  trunk(context, long, wide);
  context.restore();
  for (const foot of feet) paintFoot(context, foot, { camera, theme, size: horse.hoof.value });
}

function trunk(context: CanvasRenderingContext2D, long: number, wide: number): void {
  const points = [...HALF, ...HALF.toReversed().map(([x, y]) => [x, -y] as const)];
  context.beginPath();
  points.forEach(([x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    const middle = [((x + nextX) / 2) * long, ((y + nextY) / 2) * wide] as const;
    if (index === 0) context.moveTo(...middle);
    else context.quadraticCurveTo(x * long, y * wide, ...middle);
  });
  const [first, second] = [points[0], points[1]];
  if (first !== undefined && second !== undefined) {
    context.quadraticCurveTo(
      first[0] * long,
      first[1] * wide,
      ((first[0] + second[0]) / 2) * long,
      ((first[1] + second[1]) / 2) * wide,
    );
  }
  context.closePath();
  context.globalAlpha = 0.72;
  context.fill();
  context.globalAlpha = 1;
  context.stroke();
}

function neck(context: CanvasRenderingContext2D, long: number, wide: number): void {
  const chest = 0.4 * long;
  const poll = (0.5 + NECK) * long;
  context.beginPath();
  context.moveTo(chest, -0.24 * wide);
  context.lineTo(poll, -0.15 * wide);
  context.lineTo(poll, 0.15 * wide);
  context.lineTo(chest, 0.24 * wide);
  context.closePath();
  context.fill();
  context.stroke();
  context.beginPath();
  context.ellipse(poll + (HEAD * long) / 2, 0, (HEAD * long) / 2, 0.16 * wide, 0, 0, 2 * Math.PI);
  context.fill();
  context.stroke();
  for (const side of [-1, 1]) {
    context.beginPath();
    context.moveTo(poll + 0.02 * long, side * 0.08 * wide);
    context.lineTo(poll - 0.06 * long, side * 0.2 * wide);
    context.lineTo(poll + 0.07 * long, side * 0.15 * wide);
    context.fill();
    context.stroke();
  }
}

function tail(context: CanvasRenderingContext2D, long: number, wide: number): void {
  context.beginPath();
  context.moveTo(-0.47 * long, 0);
  context.quadraticCurveTo(-0.62 * long, 0.1 * wide, -0.72 * long, -0.06 * wide);
  context.stroke();
}

/** A foot on the ground is full, one in the air hollow. */
function paintFoot(
  context: CanvasRenderingContext2D,
  { foot, point, heading, isDown }: FootPlace,
  { camera, theme, size }: DrawContext & { readonly size: number },
): void {
  const at = screenOf(camera, point);
  context.save();
  context.translate(at.x, at.y);
  context.rotate(screenAngle(camera, heading));
  hoofShape(context, isFore(foot) ? 'fore' : 'hind', Math.max(2.6, (size / 2) * camera.scale));
  context.fillStyle = isDown ? theme.disc : theme.onDisc;
  context.fill();
  context.lineWidth = 1.1;
  context.strokeStyle = isDown ? theme.onDisc : theme.disc;
  context.stroke();
  context.restore();
}
