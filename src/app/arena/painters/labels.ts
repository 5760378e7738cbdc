import type { PlacedObstacle } from '../../../core/course/placed.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { obstacleTitle } from '../../app-words.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { LabelForm, LabelSpot, PlacedLabel } from './crowd.ts';
import type { DrawContext } from './draw-context.ts';
import { font, textWidth } from './typeface.ts';

/** Half the disc with a number, and the air that its plate leaves about it, pixels. */
const DISC = 10.5;
const AIR = 2;
/** What it costs to leave the name out, in pixels of distance from the obstacle. */
const NAME = 26;
/** How far from the obstacle a label may stand, pixels; each costs more than its distance, for a far label has to be sought. */
const AWAY = [5, 11, 18, 27, 40];
const FAR = 1.7;
/** What it costs to stand nearer to another obstacle than to its own. */
const STRANGE = 30;

interface LabelWords {
  readonly obstacle: string;
  readonly numbers: string;
  readonly name: string;
  /** The width of the disc, pixels. */
  readonly disc: number;
}

/** The number of an obstacle with its name, or without it where there is no room. */
export type ObstacleLabel = PlacedLabel<LabelWords>;

/** How an obstacle may be labelled: with its number and name, or with its number only. `boxes` are of all obstacles. */
export function labelForms(
  placed: PlacedObstacle,
  survey: Survey,
  { box, boxes }: { readonly box: Bounds; readonly boxes: readonly Bounds[] },
): readonly LabelForm<LabelWords>[] {
  const { obstacle, pieces } = placed;
  const numbers = (survey.numbers.get(obstacle.id) ?? []).join(', ');
  const name = numbers === '' && pieces.length < 2 ? '' : obstacleTitle(obstacle, survey.layout);
  const disc = numbers === '' ? 0 : Math.max(2 * DISC, textWidth(numbers, 'bold') + 12);
  const height = 2 * (DISC + AIR);
  const price = (label: Bounds) => {
    const own = gapBetween(label, box);
    for (const other of boxes) if (other !== box && gapBetween(label, other) < own) return STRANGE;
    return 0;
  };
  const form = (words: string, less: number): LabelForm<LabelWords> => {
    const width = disc + (words === '' ? 0 : textWidth(words, 'bold') + 10) + 2 * AIR;
    const content = { obstacle: obstacle.id, numbers, name: words, disc };
    return { content, width, height, places: () => placesAround(box, width, height), less, price };
  };
  return [...(name === '' ? [] : [form(name, 0)]), ...(numbers === '' ? [] : [form('', NAME)])];
}

/** Middles of a label beside a box: above, below, left, right, then at the corners, nearer ones first. */
function placesAround(box: Bounds, width: number, height: number): readonly LabelSpot[] {
  const [midX, midY] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];
  const spots: LabelSpot[] = [];
  for (const away of AWAY) {
    let index = 0;
    const add = (x: number, y: number) => {
      spots.push({ x, y, far: FAR * (away - 5) + index / 2 });
      index += 1;
    };
    const left = box.minX - away - width / 2;
    const right = box.maxX + away + width / 2;
    const above = box.minY - away - height / 2;
    const below = box.maxY + away + height / 2;
    add(midX, above);
    add(midX, below);
    add(left, midY);
    add(right, midY);
    add(box.minX + width / 2, above);
    add(box.maxX - width / 2, above);
    add(box.minX + width / 2, below);
    add(box.maxX - width / 2, below);
    add(left, box.minY + height / 2);
    add(right, box.minY + height / 2);
    add(left, box.maxY - height / 2);
    add(right, box.maxY - height / 2);
    add(left, above);
    add(right, above);
    add(left, below);
    add(right, below);
  }
  return spots;
}

/** The square of the distance between two boxes; 0 when they touch. */
function gapBetween(a: Bounds, b: Bounds): number {
  const x = Math.max(0, a.minX - b.maxX, b.minX - a.maxX);
  const y = Math.max(0, a.minY - b.maxY, b.minY - a.maxY);
  return x * x + y * y;
}

/** Number discs and names, each on its plate; those of what is chosen in the colour of the selection. */
export function paintLabels(
  context: CanvasRenderingContext2D,
  labels: readonly ObstacleLabel[],
  { theme, chosen }: Pick<DrawContext, 'theme'> & { readonly chosen: readonly string[] },
): void {
  const ids = new Set(chosen.map((key) => key.split('/')[0]));
  context.font = font('bold');
  context.textBaseline = 'middle';
  for (const { content, box } of labels) {
    const middle = (box.minY + box.maxY) / 2;
    const left = box.minX + AIR;
    context.fillStyle = theme.plate;
    context.beginPath();
    context.roundRect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY, DISC + AIR);
    context.fill();
    if (content.disc > 0) {
      context.fillStyle = ids.has(content.obstacle) ? theme.chosen : theme.disc;
      context.beginPath();
      context.roundRect(left, middle - DISC, content.disc, 2 * DISC, DISC);
      context.fill();
      context.fillStyle = theme.onDisc;
      context.textAlign = 'center';
      context.fillText(content.numbers, left + content.disc / 2, middle + 0.5);
    }
    context.fillStyle = theme.inks.words;
    context.textAlign = 'start';
    context.fillText(content.name, left + content.disc + 4, middle + 0.5);
  }
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
