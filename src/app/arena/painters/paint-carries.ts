import { type CarryArrow, carryArrows } from '../../../core/change/carry-arrow.ts';
import type { ChangeOver } from '../../../core/change/change-over.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type ScreenSize, screenOf } from '../camera.ts';
import { carryLabels, DISC, TRUCK, truckBox } from './carry-marks.ts';
import type { DrawContext } from './draw-context.ts';
import { font } from './typeface.ts';

const HEAD = 10;
/** A shorter arrow is all head, pixels. */
const SHORTEST = 6;
/** The dashes of a carry that waits for a later pass, pixels. */
export const LATER_DASH = [9, 5] as const;
/** Opacity of the carries that are not pointed at while one is. */
const FADED = 0.3;

/** An arrow for each carry of a change-over with its number in a disc, and the truck. */
export function paintCarries(
  context: CanvasRenderingContext2D,
  plan: ChangeOver,
  {
    camera,
    theme,
    size,
    focused,
  }: DrawContext & {
    readonly size: ScreenSize;
    /** The number of the carry that is pointed at; null: none. */
    readonly focused: number | null;
  },
): void {
  const isFaded = ({ number }: CarryArrow) => focused !== null && number !== focused;
  // What is pointed at is painted last, over the others.
  const inOrder = [...carryArrows(plan)].sort((a, b) => Number(a.number === focused) - Number(b.number === focused));
  context.lineJoin = 'round';
  context.lineCap = 'butt';
  for (const mark of inOrder) {
    if (mark.from === undefined || mark.to === undefined) continue;
    const [from, to] = [screenOf(camera, mark.from), screenOf(camera, mark.to)];
    context.globalAlpha = isFaded(mark) ? FADED : 1;
    const ink = mark.number === focused ? theme.guide : theme.inks.words;
    paintArrow(context, [from, to], { ink, casing: theme.plate, dash: mark.isLater ? LATER_DASH : [] });
  }
  context.globalAlpha = 1;
  paintTruck(context, plan, { camera, theme });
  context.font = font('bold');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  for (const { mark, box } of carryLabels(plan, camera, size, focused)) {
    context.globalAlpha = isFaded(mark) ? FADED : 1;
    context.fillStyle = mark.number === focused ? theme.guide : theme.plate;
    context.strokeStyle = mark.number === focused ? theme.guide : theme.inks.words;
    context.lineWidth = 1.4;
    // A later pass is told by the dashes of the disc too: what comes from the truck has no arrow.
    context.setLineDash(mark.isLater ? [3, 2] : []);
    context.beginPath();
    context.roundRect(box.minX, box.minY, box.maxX - box.minX, box.maxY - box.minY, DISC);
    context.fill();
    context.stroke();
    context.fillStyle = mark.number === focused ? theme.ground : theme.inks.words;
    context.fillText(mark.text, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 + 0.5);
  }
  context.setLineDash([]);
  context.globalAlpha = 1;
}

function paintArrow(
  context: CanvasRenderingContext2D,
  [from, to]: readonly [Point<'screen'>, Point<'screen'>],
  { ink, casing, dash }: { readonly ink: string; readonly casing: string; readonly dash: readonly number[] },
): void {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const back = (far: number, turn: number): Point<'screen'> => ({
    x: to.x - far * Math.cos(angle + turn),
    y: to.y - far * Math.sin(angle + turn),
  });
  if (Math.hypot(to.x - from.x, to.y - from.y) > SHORTEST) {
    for (const [width, colour, pattern] of [
      [4.5, casing, []],
      [1.8, ink, dash],
    ] as const) {
      context.strokeStyle = colour;
      context.lineWidth = width;
      context.setLineDash([...pattern]);
      context.beginPath();
      context.moveTo(from.x, from.y);
      // The line stops inside the head, so that its tip stays sharp.
      const end = back(HEAD * 0.7, 0);
      context.lineTo(end.x, end.y);
      context.stroke();
    }
    context.setLineDash([]);
  }
  const [left, right] = [back(HEAD, 0.42), back(HEAD, -0.42)];
  context.fillStyle = ink;
  context.beginPath();
  context.moveTo(to.x, to.y);
  context.lineTo(left.x, left.y);
  context.lineTo(right.x, right.y);
  context.closePath();
  context.fill();
}

/** The truck: a box with its cab, at its place. */
function paintTruck(context: CanvasRenderingContext2D, plan: ChangeOver, { camera, theme }: DrawContext): void {
  const { minX, minY, maxX, maxY } = truckBox(plan, camera);
  context.fillStyle = theme.ground;
  context.strokeStyle = theme.inks.words;
  context.lineWidth = 2;
  context.beginPath();
  context.roundRect(minX, minY, maxX - minX, maxY - minY, 3);
  context.fill();
  context.stroke();
  const cab = minX + 1.45 * TRUCK.x;
  context.beginPath();
  context.moveTo(cab, minY);
  context.lineTo(cab, maxY);
  context.stroke();
}
