import type { Sweep } from '../../../core/checks/geometry/sweep.ts';
import { printLength } from '../../../core/measure/length.ts';
import { distance, lerp, type Point } from '../../../core/plane/point.ts';
import { toWorld } from '../../../core/plane/pose.ts';
import { edges, type Ring, rectangle, transformRing } from '../../../core/plane/ring.ts';
import { nearestFraction } from '../../../core/plane/segment.ts';
import type { Survey } from '../../../core/survey.ts';
import { arenaWords } from '../../../words/arena.ts';
import type { Camera } from '../camera.ts';
import type { Theme } from './inks.ts';
import { paintMarks, trace } from './marks.ts';
import { paintGap } from './tape-mark.ts';

/** Letters of the number, pixels. */
const LETTERS = 13;
/** The number stands this far from the place it is about, so that it does not cover it, pixels. */
const AWAY = 26;

/** The ground that hooves and body sweep while a horse backs or turns. */
export function paintSweep(
  context: CanvasRenderingContext2D,
  { camera, theme, sweep }: { readonly camera: Camera; readonly theme: Theme; readonly sweep: Sweep },
): void {
  const colour = sweep.clear < 0 ? theme.must : theme.chosen;
  const fill = (rings: readonly Ring[], alpha: number, dash: readonly number[]) => {
    for (const ring of rings) {
      trace(context, ring, camera);
      context.closePath();
      context.globalAlpha = alpha;
      context.fillStyle = colour;
      context.fill();
      context.globalAlpha = 0.8;
      context.strokeStyle = colour;
      context.lineWidth = 1.5;
      context.setLineDash([...dash]);
      context.stroke();
      context.setLineDash([]);
    }
    context.globalAlpha = 1;
  };
  fill(sweep.body, 0.08, [5, 4]);
  fill(sweep.area, 0.2, []);
}

/** The hooves' rectangle where it is narrowest, the tape to what is nearest, and the number. */
export function paintNarrowest(
  context: CanvasRenderingContext2D,
  survey: Survey,
  { camera, theme, sweep }: { readonly camera: Camera; readonly theme: Theme; readonly sweep: Sweep },
): void {
  const piece = survey.pieces.find(({ key }) => key === sweep.key);
  if (piece === undefined) return;
  const { bodyLength, bodyWidth } = survey.horse;
  const stands = piece.figure.stands === 'standing';
  const outline = stands
    ? rectangle(bodyLength.value, bodyWidth.value)
    : rectangle(sweep.base.length, sweep.base.width);
  const ring = transformRing(outline, sweep.at);
  trace(context, ring, camera);
  context.closePath();
  context.strokeStyle = sweep.clear < 0 ? theme.must : theme.inks.words;
  context.lineWidth = 2;
  context.stroke();
  const ends = nearest(ring, piece.footprint);
  if (ends === undefined) return;
  if (sweep.clear > 0) paintGap(context, ends, { camera, theme });
  const room = printLength(Math.abs(sweep.clear), survey.course.unit);
  paintMarks(
    context,
    [
      {
        kind: 'words',
        at: aside(ends, sweep.at, camera),
        text: sweep.clear < 0 ? arenaWords.tooLittle(room) : arenaWords.toSpare(room),
        size: LETTERS / camera.scale,
        ink: 'words',
        align: 'middle',
        weight: 'bold',
        backing: 'plate',
      },
    ],
    { camera, theme },
  );
}

/** The horse on its way through: the rectangle of its hooves, its body dashed, and a line to where it faces. */
export function paintSweepStep(
  context: CanvasRenderingContext2D,
  survey: Survey,
  {
    camera,
    theme,
    sweep,
    step,
  }: { readonly camera: Camera; readonly theme: Theme; readonly sweep: Sweep; readonly step: number },
): void {
  const pose = sweep.motion[Math.min(step, sweep.motion.length - 1)];
  if (pose === undefined) return;
  const { bodyLength, bodyWidth } = survey.horse;
  const outlines = [
    { ring: rectangle(sweep.base.length, sweep.base.width), dash: [], width: 3 },
    { ring: rectangle(bodyLength.value, bodyWidth.value), dash: [6, 4], width: 1.5 },
  ];
  context.strokeStyle = theme.inks.words;
  for (const { ring, dash, width } of outlines) {
    trace(context, transformRing(ring, pose), camera);
    context.closePath();
    context.lineWidth = width;
    context.setLineDash(dash);
    context.stroke();
  }
  context.setLineDash([]);
  const nose = toWorld(pose, { x: bodyLength.value / 2 + 0.35, y: 0 });
  trace(context, [pose, nose], camera);
  context.lineWidth = 3;
  context.stroke();
}

/** A place beyond the piece, as seen from the horse; upright under the tape where both are in one place. */
function aside([from, to]: readonly [Point, Point], horse: Point, camera: Camera): Point {
  const long = distance(horse, to);
  if (long < 1e-6) return { x: from.x, y: from.y - AWAY / camera.scale };
  return lerp(horse, to, 1 + AWAY / camera.scale / long);
}

/** The nearest two points of the edges of two rings. */
function nearest(a: Ring, b: Ring): readonly [Point, Point] | undefined {
  let least: { readonly far: number; readonly ends: readonly [Point, Point] } | undefined;
  const look = (corners: Ring, sides: Ring, order: 1 | -1) => {
    for (const corner of corners) {
      for (const side of edges(sides)) {
        const foot = lerp(side[0], side[1], nearestFraction(side, corner));
        const far = distance(corner, foot);
        if (least === undefined || far < least.far)
          least = { far, ends: order === 1 ? [corner, foot] : [foot, corner] };
      }
    }
  };
  look(a, b, 1);
  look(b, a, -1);
  return least?.ends;
}
