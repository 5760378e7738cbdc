import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import { type Path, pathPoints } from '../../../core/plane/path.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { obstacleTitle } from '../../app-words.ts';
import { type Camera, type ScreenSize, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { labelPlaces } from './label-places.ts';
import { font } from './typeface.ts';

/** Below this many pixels a metre only the numbers stand beside the obstacles. */
const NAMES_FROM = 7.5;
const DISC = 10;

/** Samples of a part of the line on the screen: a drag leaves most parts as they are. */
const dotsOf = memoizeByIdentity((path: Path, camera: Camera): readonly Point<'screen'>[] => {
  const points = pathPoints(path, Math.max(0.4, 9 / camera.scale));
  return points.map((at) => screenOf(camera, at));
});

/** Number discs and names, each where it covers least. */
export function paintLabels(
  context: CanvasRenderingContext2D,
  survey: Survey,
  {
    camera,
    theme,
    size,
    chosen,
    kept,
  }: DrawContext & { readonly size: ScreenSize; readonly chosen: readonly string[]; readonly kept: readonly Bounds[] },
): void {
  context.font = font('bold');
  const labels = survey.obstacles.flatMap((placed) => {
    const numbers = (survey.numbers.get(placed.obstacle.id) ?? []).join(', ');
    const named = camera.scale >= NAMES_FROM || numbers === '';
    const name =
      named && !(numbers === '' && placed.pieces.length < 2) ? obstacleTitle(placed.obstacle, survey.layout) : '';
    if (numbers === '' && name === '') return [];
    const disc = numbers === '' ? 0 : Math.max(2 * DISC, context.measureText(numbers).width + 10);
    const words = name === '' ? 0 : context.measureText(name).width + 8;
    const isChosen = chosen.some((key) => key.split('/')[0] === placed.obstacle.id);
    return [{ placed, numbers, name, disc, width: disc + words, isChosen }];
  });
  const dots = survey.line.elements.flatMap(({ path }) => dotsOf(path, camera));
  const room: Bounds = { minX: 2, minY: 2, maxX: size.width - 2, maxY: size.height - 2 };
  const places = labelPlaces(
    labels.map(({ placed, width }) => ({ box: screenBox(placed.bounds, camera), width, height: 2 * DISC })),
    dots,
    { room, kept },
  );
  context.textBaseline = 'middle';
  labels.forEach((label, index) => {
    const place = places[index];
    if (place === undefined) return;
    const left = place.x - label.width / 2;
    context.fillStyle = theme.plate;
    context.beginPath();
    context.roundRect(left - 2, place.y - DISC - 2, label.width + 4, 2 * DISC + 4, DISC + 2);
    context.fill();
    if (label.disc > 0) {
      context.fillStyle = label.isChosen ? theme.chosen : theme.disc;
      context.beginPath();
      context.roundRect(left, place.y - DISC, label.disc, 2 * DISC, DISC);
      context.fill();
      context.fillStyle = theme.onDisc;
      context.textAlign = 'center';
      context.fillText(label.numbers, left + label.disc / 2, place.y + 0.5);
    }
    context.fillStyle = theme.inks.words;
    context.textAlign = 'start';
    context.fillText(label.name, left + label.disc + 4, place.y + 0.5);
  });
}

export function screenBox(bounds: Bounds, camera: Camera): Bounds {
  const a = screenOf(camera, { x: bounds.minX, y: bounds.minY });
  const b = screenOf(camera, { x: bounds.maxX, y: bounds.maxY });
  return {
    minX: Math.min(a.x, b.x),
    maxX: Math.max(a.x, b.x),
    minY: Math.min(a.y, b.y),
    maxY: Math.max(a.y, b.y),
  };
}
