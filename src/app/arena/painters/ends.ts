import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import { poseAt } from '../../../core/plane/path.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import { terms } from '../../../words/terms.ts';
import { type Camera, screenOf } from '../camera.ts';
import { createCrowd } from './crowd.ts';
import type { DrawContext } from './draw-context.ts';
import { wallBoxes, wayInBox } from './rail.ts';
import { lineDots, pieceDots } from './samples.ts';
import { font, LETTERS, textWidth } from './typeface.ts';

type EndText = typeof terms.start | typeof terms.end;

/** Half the sign at an end, pixels, and the height of the plate with its word. */
const SIGN = 5;
const PLATE = LETTERS + 7;
/** The word is left out where it would cover more samples of line and poles: the sign says it too. */
const MOST_COVERED = 1;

/** The start or the end of the ride: its sign on the line, and the plate with its word; null where it finds no room. */
export interface EndPlace {
  readonly text: EndText;
  readonly at: Point<'screen'>;
  readonly plate: Bounds | null;
}

/** Where start and end are marked, with their words off the walls, one another, most of line and poles, and the `badges`. */
export const endPlaces = memoizeByIdentity(
  (survey: Survey, camera: Camera, badges: readonly Bounds[]): readonly EndPlace[] => {
    const ends = endsOf(survey).map(({ at, text }) => ({ text, at: screenOf(camera, at) }));
    const { arena } = survey.course;
    const anywhere = { minX: -4000, maxX: 8000, minY: -4000, maxY: 8000 };
    const taken = [
      ...badges,
      ...wallBoxes(arena, camera),
      wayInBox(arena, camera),
      ...ends.map(({ at }) => signBox(at)),
    ];
    const crowd = createCrowd(anywhere, { taken, dots: [...lineDots(survey, camera), ...pieceDots(survey, camera)] });
    return ends.map(({ text, at }) => {
      const width = textWidth(text, 'bold') + 10;
      const [below, aside] = [SIGN + 4 + PLATE / 2, SIGN + 5 + width / 2];
      const places = [
        { x: at.x, y: at.y + below, far: 0 },
        { x: at.x, y: at.y - below, far: 1 },
        { x: at.x + aside, y: at.y, far: 2 },
        { x: at.x - aside, y: at.y, far: 3 },
        { x: at.x + aside, y: at.y + below, far: 4 },
        { x: at.x - aside, y: at.y + below, far: 5 },
        { x: at.x + aside, y: at.y - below, far: 6 },
        { x: at.x - aside, y: at.y - below, far: 7 },
      ];
      const placed = crowd.put([{ content: text, width, height: PLATE, places: () => places, less: 0 }], MOST_COVERED);
      return { text, at, plate: placed?.box ?? null };
    });
  },
);

function endsOf(survey: Survey): readonly { readonly at: Point; readonly text: EndText }[] {
  if (survey.layout.ride.legs.length === 0) return [];
  const last = survey.line.elements.at(-1);
  const start = { at: survey.layout.ride.start, text: terms.start } as const;
  if (last === undefined || last.path.length === 0) return [start];
  return [start, { at: poseAt(last.path, last.length), text: terms.end }];
}

function signBox({ x, y }: Point<'screen'>): Bounds {
  const half = SIGN + 2;
  return { minX: x - half, maxX: x + half, minY: y - half, maxY: y + half };
}

/** The room that start and end take on the screen: their signs, and their words. */
export function endBoxes(ends: readonly EndPlace[]): readonly Bounds[] {
  return ends.flatMap(({ at, plate }) => (plate === null ? [signBox(at)] : [signBox(at), plate]));
}

/** A disc at the start and a square at the end, each with its word. */
export function paintEnds(
  context: CanvasRenderingContext2D,
  ends: readonly EndPlace[],
  { theme }: Pick<DrawContext, 'theme'>,
): void {
  context.font = font('bold');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { text, at, plate } of ends) {
    context.fillStyle = theme.disc;
    context.strokeStyle = theme.ground;
    context.lineWidth = 1.5;
    context.beginPath();
    if (text === terms.start) context.arc(at.x, at.y, SIGN, 0, 2 * Math.PI);
    else context.rect(at.x - SIGN, at.y - SIGN, 2 * SIGN, 2 * SIGN);
    context.stroke();
    context.fill();
    if (plate === null) continue;
    const { minX, minY, maxX, maxY } = plate;
    context.beginPath();
    context.roundRect(minX, minY, maxX - minX, maxY - minY, 4);
    context.fill();
    context.fillStyle = theme.onDisc;
    context.fillText(text, (minX + maxX) / 2, (minY + maxY) / 2 + 0.5);
  }
}
