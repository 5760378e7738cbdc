import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import { type Path, pathPoints, poseAt } from '../../../core/plane/path.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Gap, Landings } from '../../../core/ride/line.ts';
import type { Survey } from '../../../core/survey.ts';
import type { Pointed } from '../../view.ts';
import { type Camera, screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { TRAVEL_STYLES, travelKind } from './travel-styles.ts';

/** Distance between the arrows on the way to an obstacle, pixels. */
const ARROWS_APART = 110;

/** A part of the line on the screen: a drag leaves most parts as they are. */
const screenPath = memoizeByIdentity((path: Path, camera: Camera): readonly Point<'screen'>[] => {
  const points = pathPoints(path, Math.max(0.1, 5 / camera.scale));
  return points.map((at) => screenOf(camera, at));
});

/** A part of the line in the picture: the path of an element, or a gap by its ends. It is the same object while nothing about it changes. */
export type TravelPart = Path | Gap['ends'];

/** Paints the line of travel, each part as it is ridden, with arrows and landings: those that are `shown`, or all. */
export function paintTravel(
  context: CanvasRenderingContext2D,
  survey: Survey,
  eye: DrawContext & { readonly pointed: Pointed; readonly shown?: (part: TravelPart) => boolean },
): void {
  const { camera, theme, pointed, shown = () => true } = eye;
  const isPointed = (leg: number) => pointed?.kind === 'leg' && pointed.leg === leg;
  context.lineJoin = 'round';
  for (const element of survey.line.elements) {
    if (!isPointed(element.leg) || element.length === 0) continue;
    context.strokeStyle = theme.pointed;
    context.globalAlpha = 0.75;
    context.lineWidth = 11;
    context.lineCap = 'round';
    strokeLine(context, screenPath(element.path, camera));
    context.globalAlpha = 1;
  }
  for (const element of survey.line.elements) {
    if (!shown(element.path)) continue;
    const look = TRAVEL_STYLES[travelKind(element)];
    const colour = theme.inks[look.ink];
    if (element.turn !== 0) {
      spot(context, element.path, { camera, colour, way: Math.sign(element.turn) });
      continue;
    }
    context.strokeStyle = colour;
    context.lineWidth = look.width;
    context.lineCap = look.cap;
    context.setLineDash([...look.dash]);
    strokeLine(context, screenPath(element.path, camera));
    context.setLineDash([]);
    const apart = ARROWS_APART / camera.scale;
    if (element.part === 'obstacle' || element.length * camera.scale < 40) continue;
    const count = Math.max(1, Math.round(element.length / apart));
    for (let i = 0; i < count; i++) {
      arrow(context, poseAt(element.path, (element.length * (i + 0.5)) / count), { camera, colour });
    }
  }
  for (const { ends, landings } of survey.line.gaps) {
    if (shown(ends)) paintLandings(context, landings, { survey, camera, theme });
  }
}

function strokeLine(context: CanvasRenderingContext2D, points: readonly Point<'screen'>[]): void {
  context.beginPath();
  for (const { x, y } of points) context.lineTo(x, y);
  context.stroke();
}

function arrow(
  context: CanvasRenderingContext2D,
  pose: { x: number; y: number; angle: number },
  { camera, colour }: { camera: Camera; colour: string },
): void {
  const at = screenOf(camera, pose);
  context.save();
  context.translate(at.x, at.y);
  context.rotate(screenAngle(camera, pose.angle));
  context.fillStyle = colour;
  context.beginPath();
  context.moveTo(7, 0);
  context.lineTo(-4, 4.6);
  context.lineTo(-1.5, 0);
  context.lineTo(-4, -4.6);
  context.fill();
  context.restore();
}

/** A turn on the spot: most of a circle with a head. */
function spot(
  context: CanvasRenderingContext2D,
  path: Path,
  { camera, colour, way }: { camera: Camera; colour: string; way: number },
): void {
  const first = path[0];
  if (first === undefined) return;
  const at = screenOf(camera, first.start);
  const radius = Math.max(7, 0.7 * camera.scale);
  context.strokeStyle = colour;
  context.lineWidth = 2;
  context.lineCap = 'butt';
  context.beginPath();
  context.arc(at.x, at.y, radius, 0.6, 0.6 - way * 4.9, way > 0);
  context.stroke();
  const end = 0.6 - way * 4.9;
  context.save();
  context.translate(at.x + radius * Math.cos(end), at.y + radius * Math.sin(end));
  context.rotate(end - (way * Math.PI) / 2);
  context.fillStyle = colour;
  context.beginPath();
  context.moveTo(6, 0);
  context.lineTo(-3, 4);
  context.lineTo(-3, -4);
  context.fill();
  context.restore();
}

/** A hoof mark for each landing: open at the heel, turned the way the horse goes; hollow where the stride does not fit. */
function paintLandings(
  context: CanvasRenderingContext2D,
  landings: Landings,
  { survey, camera, theme }: DrawContext & { readonly survey: Survey },
): void {
  const size = Math.min(9, Math.max(2.6, 0.16 * camera.scale));
  for (const { at, point } of landings.places) {
    const element = survey.line.elements.find((each) => at >= each.from && at <= each.from + each.length);
    const heading = element === undefined ? 0 : poseAt(element.path, at - element.from).angle;
    const place = screenOf(camera, point);
    context.save();
    context.translate(place.x, place.y);
    context.rotate(screenAngle(camera, heading));
    hoof(context, size);
    context.fillStyle = landings.fits ? theme.inks.landing : theme.ground;
    context.fill();
    context.strokeStyle = landings.fits ? theme.ground : theme.must;
    context.lineWidth = landings.fits ? 1 : 1.6;
    context.stroke();
    context.restore();
  }
}

/** The outline of a hoof about the origin, toe towards +x. */
function hoof(context: CanvasRenderingContext2D, size: number): void {
  context.beginPath();
  context.moveTo(-size, -size * 0.75);
  context.bezierCurveTo(size * 1.7, -size * 1.35, size * 1.7, size * 1.35, -size, size * 0.75);
  context.lineTo(-size * 0.25, 0);
  context.closePath();
}
