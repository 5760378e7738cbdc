import { type Bounds, boundsIntersect } from '../../../core/plane/ring.ts';
import { type LinePlace, linePlaces } from '../../../core/ride/line-places.ts';
import type { Survey } from '../../../core/survey.ts';
import { type Camera, screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { screenBox } from './labels.ts';
import { paintPlate } from './paint-plate.ts';
import { endBoxes } from './paint-travel.ts';
import { font } from './typeface.ts';

/** Half the length of a tick, pixels. */
const HALF_TICK = 7;
/** Below this many pixels a metre the words would lie over one another: the ticks stand alone. */
const WORDS_FROM = 9;
/** About the width of a letter and the height of a line, pixels. */
const LETTER = 6.4;
const LINE = 14;

/** Where a word stands: beside its tick, right or left of the line as it is ridden. */
function wordBox({ pose, words }: LinePlace, camera: Camera, side: 1 | -1): Bounds {
  const at = screenOf(camera, pose);
  const aside = screenAngle(camera, pose.angle) + (side * Math.PI) / 2;
  const width = words.join(', ').length * LETTER;
  const off = HALF_TICK + 4;
  const x = at.x + Math.cos(aside) * (off + width / 2);
  const y = at.y + Math.sin(aside) * (off + LINE / 2);
  return { minX: x - width / 2, maxX: x + width / 2, minY: y - LINE / 2, maxY: y + LINE / 2 };
}

/** The words at a tick, and the room that they take on the screen. */
export interface PlaceWords {
  readonly place: LinePlace;
  readonly box: Bounds;
}

/** The places whose words are shown: clear of the start, the end and each other, and where it can be of the pieces. */
export function placeWords(survey: Survey, camera: Camera): readonly PlaceWords[] {
  if (camera.scale < WORDS_FROM) return [];
  const taken = [...endBoxes(survey, camera)];
  const pieces = survey.pieces.map((piece) => screenBox(piece.bounds, camera));
  return linePlaces(survey.line).flatMap((place) => {
    const free = ([1, -1] as const)
      .map((side) => wordBox(place, camera, side))
      .filter((box) => !taken.some((other) => boundsIntersect(box, other, 0)));
    const box = free.find((each) => !pieces.some((piece) => boundsIntersect(each, piece, 0))) ?? free[0];
    if (box === undefined) return [];
    taken.push(box);
    return [{ place, box }];
  });
}

/** A tick across the line where the gait or the lead changes, with its word where the picture is large enough. */
export function paintPlaces(
  context: CanvasRenderingContext2D,
  { survey, words }: { readonly survey: Survey; readonly words: readonly PlaceWords[] },
  { camera, theme }: DrawContext,
): void {
  context.strokeStyle = theme.inks.words;
  context.lineWidth = 2;
  context.lineCap = 'butt';
  for (const { pose } of linePlaces(survey.line)) {
    const at = screenOf(camera, pose);
    const across = screenAngle(camera, pose.angle) + Math.PI / 2;
    const [x, y] = [HALF_TICK * Math.cos(across), HALF_TICK * Math.sin(across)];
    context.beginPath();
    context.moveTo(at.x - x, at.y - y);
    context.lineTo(at.x + x, at.y + y);
    context.stroke();
  }
  context.font = font('regular');
  for (const { place, box } of words) {
    const plate = { ...box, minX: box.minX - 2, maxX: box.maxX + 2 };
    paintPlate(context, plate, place.words.join(', '), { theme });
  }
}
