import type { Point } from '../../../core/plane/point.ts';
import { linePlaces } from '../../../core/ride/line-places.ts';
import type { Survey } from '../../../core/survey.ts';
import { type Camera, screenAngle, screenOf } from '../camera.ts';
import type { LabelForm, LabelSpot, PlacedLabel } from './crowd.ts';
import type { DrawContext } from './draw-context.ts';
import { paintPlate } from './paint-plate.ts';
import { font, LETTERS, textWidth } from './typeface.ts';

/** Half the length of a tick, pixels. */
const HALF_TICK = 7;
/** Below this many pixels a metre the words would lie over one another: the ticks stand alone. */
const WORDS_FROM = 8;
const LINE = LETTERS + 3;
/** How far beside its tick, and how far along the line from it, a word may stand. Pixels. */
const ASIDE = [4, 12, 22];
const ALONG = [0, 14, -14, 28, -28];
/** What it costs to leave out all but the first word. */
const FIRST_ONLY = 20;

/** A change on the line: where it is on the screen, the tick across the line, and what is said of it. */
interface WordPlace {
  readonly at: Point<'screen'>;
  /** The direction of the line on the screen. */
  readonly angle: number;
  /** Points on the tick. */
  readonly tick: readonly Point<'screen'>[];
  readonly words: readonly string[];
}

/** The words at a tick, and the room that they take on the screen. */
export type PlaceWords = PlacedLabel<string>;

/** The places whose words are shown. */
export function wordPlaces(survey: Survey, camera: Camera): readonly WordPlace[] {
  if (camera.scale < WORDS_FROM) return [];
  return linePlaces(survey.line).map(({ pose, words }) => {
    const at = screenOf(camera, pose);
    const angle = screenAngle(camera, pose.angle);
    const [x, y] = [-Math.sin(angle) * HALF_TICK, Math.cos(angle) * HALF_TICK];
    const tick = [-1, 0, 1].map((t) => ({ x: at.x + t * x, y: at.y + t * y }));
    return { at, angle, tick, words };
  });
}

/** All of its words, or the first one only. */
export function wordForms({ at, angle, words }: WordPlace): readonly LabelForm<string>[] {
  const all = words.join(', ');
  const first = all.split(',')[0] ?? all;
  const form = (text: string, less: number): LabelForm<string> => {
    const width = textWidth(text, 'regular') + 6;
    return { content: text, width, height: LINE, places: () => placesBeside(at, angle, width), less };
  };
  return first === all ? [form(all, 0)] : [form(all, 0), form(first, FIRST_ONLY)];
}

/** Middles of a word right and left of the line, nearer ones first. */
function placesBeside(at: Point<'screen'>, angle: number, width: number): readonly LabelSpot[] {
  const along = { x: Math.cos(angle), y: Math.sin(angle) };
  const across = { x: -along.y, y: along.x };
  const spots: LabelSpot[] = [];
  for (const aside of ASIDE) {
    for (const by of ALONG) {
      for (const side of [1, -1]) {
        const x = at.x + side * across.x * (HALF_TICK + aside + width / 2) + along.x * by;
        const y = at.y + side * across.y * (HALF_TICK + aside + LINE / 2) + along.y * by;
        spots.push({ x, y, far: aside - 4 + Math.abs(by) + (side === 1 ? 0 : 1) });
      }
    }
  }
  return spots;
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
  for (const { content, box } of words) paintPlate(context, box, content, { theme });
}
