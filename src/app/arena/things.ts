import type { PlacedObstacle } from '../../core/course/placed.ts';
import type { Mark } from '../../core/plane/mark.ts';
import { sampled } from '../../core/plane/path.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Bounds, Ring } from '../../core/plane/ring.ts';
import type { Survey } from '../../core/survey.ts';
import { obstacleTitle } from '../words.ts';
import { type Camera, screenOf, type Size } from './camera.ts';
import type { Looks } from './inks.ts';
import { labelPlaces } from './label-places.ts';
import { inkMarks, LETTERS } from './marks.ts';
import { movedMarks } from './moved-marks.ts';

interface Eye {
  readonly camera: Camera;
  readonly looks: Looks;
}

const drawn = new WeakMap<PlacedObstacle, readonly Mark[]>();

/** All marks of an obstacle on the ground, decks first, remembered by identity. */
function marksOf(placed: PlacedObstacle): readonly Mark[] {
  const known = drawn.get(placed);
  if (known !== undefined) return known;
  const decksFirst = [...placed.pieces].sort(
    (a, b) => Number(b.figure.stands === 'deck') - Number(a.figure.stands === 'deck'),
  );
  const marks = decksFirst.flatMap((piece) => movedMarks(piece.figure.marks, piece.pose));
  drawn.set(placed, marks);
  return marks;
}

export function inkThings(context: CanvasRenderingContext2D, survey: Survey, eye: Eye): void {
  for (const obstacle of survey.obstacles) inkMarks(context, marksOf(obstacle), eye);
}

/** What is chosen: a halo round its pieces, and a quiet frame round a whole obstacle. */
export function inkChosen(
  context: CanvasRenderingContext2D,
  survey: Survey,
  { camera, looks, chosen }: Eye & { readonly chosen: readonly string[] },
): void {
  const keys = new Set(chosen);
  for (const obstacle of survey.obstacles) {
    const whole = keys.has(obstacle.obstacle.id);
    for (const piece of obstacle.pieces) {
      if (!whole && !keys.has(piece.key)) continue;
      context.strokeStyle = looks.chosen;
      context.lineWidth = 5;
      context.globalAlpha = 0.32;
      outline(context, piece.footprint, camera);
      context.globalAlpha = 1;
      context.lineWidth = 1.5;
      outline(context, piece.footprint, camera);
    }
    if (!whole) continue;
    const box = screenBox(obstacle.bounds, camera);
    context.setLineDash([5, 4]);
    context.lineWidth = 1.2;
    context.strokeStyle = looks.chosen;
    context.strokeRect(box.minX - 9, box.minY - 9, box.maxX - box.minX + 18, box.maxY - box.minY + 18);
    context.setLineDash([]);
  }
}

function outline(context: CanvasRenderingContext2D, ring: Ring, camera: Camera): void {
  context.beginPath();
  ring.forEach((corner, index) => {
    const at = screenOf(camera, corner);
    if (index === 0) context.moveTo(at.x, at.y);
    else context.lineTo(at.x, at.y);
  });
  context.closePath();
  context.stroke();
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

/** Below this many pixels a metre only the numbers stand beside the obstacles. */
const NAMES_FROM = 7.5;
const DISC = 10;

/** Number discs and names, each where it covers least. */
export function inkLabels(
  context: CanvasRenderingContext2D,
  survey: Survey,
  { camera, looks, size, chosen }: Eye & { readonly size: Size; readonly chosen: readonly string[] },
): void {
  context.font = `600 12px ${LETTERS}`;
  const labels = survey.obstacles.flatMap((placed) => {
    const numbers = (survey.numbers.get(placed.obstacle.id) ?? []).join(', ');
    const named = camera.scale >= NAMES_FROM || numbers === '';
    const name = named && !(numbers === '' && placed.pieces.length < 2) ? obstacleTitle(placed.obstacle, survey.layout) : '';
    if (numbers === '' && name === '') return [];
    const disc = numbers === '' ? 0 : Math.max(2 * DISC, context.measureText(numbers).width + 10);
    const words = name === '' ? 0 : context.measureText(name).width + 8;
    const isChosen = chosen.some((key) => key.split('/')[0] === placed.obstacle.id);
    return [{ placed, numbers, name, disc, width: disc + words, isChosen }];
  });
  const dots: readonly Point<'screen'>[] = survey.line.elements.flatMap((element) =>
    sampled(element.path, Math.max(0.4, 9 / camera.scale)).map((at) => screenOf(camera, at)),
  );
  const room: Bounds = { minX: 2, minY: 2, maxX: size.width - 2, maxY: size.height - 2 };
  const places = labelPlaces(
    labels.map(({ placed, width }) => ({ box: screenBox(placed.bounds, camera), width, height: 2 * DISC })),
    dots,
    room,
  );
  context.textBaseline = 'middle';
  labels.forEach((label, index) => {
    const place = places[index];
    if (place === undefined) return;
    const left = place.x - label.width / 2;
    context.fillStyle = looks.plate;
    context.beginPath();
    context.roundRect(left - 2, place.y - DISC - 2, label.width + 4, 2 * DISC + 4, DISC + 2);
    context.fill();
    if (label.disc > 0) {
      context.fillStyle = label.isChosen ? looks.chosen : looks.disc;
      context.beginPath();
      context.roundRect(left, place.y - DISC, label.disc, 2 * DISC, DISC);
      context.fill();
      context.fillStyle = looks.onDisc;
      context.textAlign = 'center';
      context.fillText(label.numbers, left + label.disc / 2, place.y + 0.5);
    }
    context.fillStyle = looks.inks.words;
    context.textAlign = 'start';
    context.fillText(label.name, left + label.disc + 4, place.y + 0.5);
  });
}
