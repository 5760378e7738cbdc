import type { Horse } from '../../../core/horses/horse.ts';
import type { Pose } from '../../../core/plane/pose.ts';
import { isFore } from '../../../core/ride/footfall.ts';
import type { FootPlace } from '../../ride/feet.ts';
import { screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { hoofShape } from './hoof.ts';
import { type HorseShape, horseShape } from './horse-shape.ts';

/** From so many pixels of trunk on the tack, mane and ears are seen; under it they would be a blot. */
const TACK_FROM = 26;
/** A trunk is never drawn shorter than this: a horse smaller than a number is not found. Its feet are left out then. */
const LEAST_TRUNK = 15;
const FEET_FROM = 22;
/** Opacity and largest radius, in pixels, of what draws the eye to a small horse. */
const HALO = 0.26;
const MOST_HALO = 46;

let last: { readonly long: number; readonly wide: number; readonly shape: HorseShape } | null = null;

/** The shape for a size; of one camera it is asked for in every frame of a ride. */
function shapeFor(long: number, wide: number): HorseShape {
  if (last === null || last.long !== long || last.wide !== wide) last = { long, wide, shape: horseShape(long, wide) };
  return last.shape;
}

/** Paints the horse from above, to scale where that is large enough: body, head, tack, and where its feet are. */
export function paintHorse(
  context: CanvasRenderingContext2D,
  { pose, feet, horse }: { readonly pose: Pose; readonly feet: readonly FootPlace[]; readonly horse: Horse },
  { camera, theme }: DrawContext,
): void {
  const at = screenOf(camera, pose);
  const trunk = horse.bodyLength.value * camera.scale;
  const long = Math.max(LEAST_TRUNK, trunk);
  const wide = (horse.bodyWidth.value / horse.bodyLength.value) * long;
  const shape = shapeFor(long, wide);
  context.fillStyle = theme.pointed;
  context.globalAlpha = HALO;
  context.beginPath();
  context.arc(at.x, at.y, Math.max(18, Math.min(MOST_HALO, long)), 0, 2 * Math.PI);
  context.fill();
  context.globalAlpha = 1;
  context.save();
  context.translate(at.x + 0.05 * long, at.y + 0.07 * long);
  context.rotate(screenAngle(camera, pose.angle));
  context.fillStyle = theme.shadow;
  context.fill(shape.body);
  context.restore();
  context.save();
  context.translate(at.x, at.y);
  context.rotate(screenAngle(camera, pose.angle));
  context.lineJoin = 'round';
  context.lineCap = 'round';
  context.lineWidth = Math.max(1.1, wide * 0.035);
  context.strokeStyle = theme.horse.edge;
  context.fillStyle = theme.horse.coat;
  for (const part of [shape.tail, shape.body, shape.head]) {
    context.fill(part);
    context.stroke(part);
  }
  if (long >= TACK_FROM) paintTack(context, shape, { long, theme });
  context.restore();
  // Over the body: where they tread is what a designer looks for.
  if (trunk >= FEET_FROM) for (const foot of feet) paintFoot(context, foot, { camera, theme, size: horse.hoof.value });
}

function paintTack(
  context: CanvasRenderingContext2D,
  shape: HorseShape,
  { long, theme }: { readonly long: number } & Pick<DrawContext, 'theme'>,
): void {
  context.globalAlpha = 0.9;
  for (const [part, colour] of [
    [shape.blanket, theme.horse.blanket],
    [shape.skirt, theme.horse.saddle],
    [shape.seat, theme.horse.edge],
    [shape.ears, theme.horse.coat],
  ] as const) {
    context.fillStyle = colour;
    context.fill(part);
  }
  context.stroke(shape.ears);
  context.lineWidth = Math.max(1.4, 0.035 * long);
  context.stroke(shape.mane);
  context.globalAlpha = 1;
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
