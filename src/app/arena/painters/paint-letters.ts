import { pieceBounds } from '../../../core/course/placed.ts';
import { type Bounds, boundsIntersect } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { screenBox } from './labels.ts';
import { FONT_FAMILY } from './marks.ts';

/** Half the plate under a letter, and the air between it and its marker, pixels. */
const HALF = 7;
const AIR = 3;
/** Below this many pixels a metre the letters would hide their markers. */
const LETTERS_FROM = 9;

/** A marker's letter, and the room that it takes on the screen. */
export interface LetterPlace {
  readonly letter: string;
  readonly box: Bounds;
}

/** Beside each lettered marker, where it can be clear of other pieces and letters. */
export function letterPlaces(survey: Survey, camera: Camera): readonly LetterPlace[] {
  if (camera.scale < LETTERS_FROM) return [];
  const taken = survey.pieces.map((piece) => screenBox(pieceBounds(piece), camera));
  return survey.pieces.flatMap((piece): LetterPlace[] => {
    const letter = survey.letters.get(piece.key);
    if (letter === undefined) return [];
    const at = screenOf(camera, piece.pose);
    const own = screenBox(pieceBounds(piece), camera);
    const [x, y] = [(own.maxX - own.minX) / 2 + HALF + AIR, (own.maxY - own.minY) / 2 + HALF + AIR];
    const boxes = [
      [x, -y],
      [-x, -y],
      [x, y],
      [-x, y],
    ].map(([dx = 0, dy = 0]): Bounds => {
      const middle = { x: at.x + dx, y: at.y + dy };
      return { minX: middle.x - HALF, maxX: middle.x + HALF, minY: middle.y - HALF, maxY: middle.y + HALF };
    });
    const box = boxes.find((each) => !taken.some((other) => boundsIntersect(each, other, 0))) ?? boxes[0];
    if (box === undefined) return [];
    taken.push(box);
    return [{ letter, box }];
  });
}

export function paintLetters(
  context: CanvasRenderingContext2D,
  places: readonly LetterPlace[],
  { theme }: DrawContext,
): void {
  context.font = `700 12px ${FONT_FAMILY}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { letter, box } of places) {
    context.fillStyle = theme.plate;
    context.beginPath();
    context.roundRect(box.minX, box.minY, 2 * HALF, 2 * HALF, 3);
    context.fill();
    context.fillStyle = theme.inks.words;
    context.fillText(letter, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 + 0.5);
  }
}
