import { pathPoints } from '../../../core/plane/path.ts';
import { distance } from '../../../core/plane/point.ts';
import { type Bounds, boundsIntersect } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { screenBox } from './labels.ts';
import { paintPlate } from './paint-plate.ts';
import { font } from './typeface.ts';

/** Half the plate under a letter, and the air between it and its marker, pixels. */
const HALF = 7;
const AIR = 3;
/** Below this many pixels a metre the letters would hide their markers. */
const LETTERS_FROM = 9;

/** Where a letter may stand about its marker, the best first: at the corners, then beside. */
const SIDES = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
] as const;

/** A marker's letter, and the room that it takes on the screen. */
export interface LetterPlace {
  readonly letter: string;
  readonly box: Bounds;
}

/** Beside each lettered marker and nearer to it than to any other; where it can be, clear of pieces, letters and what is `kept` free. */
export function letterPlaces(survey: Survey, camera: Camera, kept: readonly Bounds[] = []): readonly LetterPlace[] {
  if (camera.scale < LETTERS_FROM) return [];
  const taken = [...kept, ...survey.pieces.map((piece) => screenBox(piece.bounds, camera))];
  const markers = survey.pieces.flatMap((piece) => {
    const letter = survey.letters.get(piece.key);
    return letter === undefined ? [] : [{ letter, at: screenOf(camera, piece.pose), own: piece.bounds }];
  });
  // The line among the markers: a letter on it hides the very way that it is to explain.
  const dots = survey.line.elements
    .filter(({ part }) => part === 'obstacle' && markers.length > 0)
    .flatMap(({ path }) => pathPoints(path, HALF / camera.scale).map((point) => screenOf(camera, point)));
  return markers.map(({ letter, at, own }): LetterPlace => {
    const { minX, maxX } = screenBox(own, camera);
    const off = (maxX - minX) / 2 + HALF + AIR;
    const rated = SIDES.map(([right, down]) => {
      const middle = { x: at.x + right * off, y: at.y + down * off };
      const box = { minX: middle.x - HALF, maxX: middle.x + HALF, minY: middle.y - HALF, maxY: middle.y + HALF };
      const isStrange = markers.some((other) => distance(other.at, middle) < distance(at, middle));
      const covered = taken.filter((other) => boundsIntersect(box, other, 0)).length;
      const isOnLine = dots.some(({ x, y }) => x > box.minX && x < box.maxX && y > box.minY && y < box.maxY);
      return { box, cost: covered + (isStrange ? 1.5 : 0) + (isOnLine ? 0.5 : 0) };
    });
    const [best] = rated.toSorted((a, b) => a.cost - b.cost);
    if (best === undefined) throw new Error('letterPlaces: there are sides');
    taken.push(best.box);
    return { letter, box: best.box };
  });
}

export function paintLetters(
  context: CanvasRenderingContext2D,
  places: readonly LetterPlace[],
  draw: DrawContext,
): void {
  context.font = font('bold');
  for (const { letter, box } of places) paintPlate(context, box, letter, draw);
}
