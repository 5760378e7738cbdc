import type { Point } from '../../../core/plane/point.ts';
import type { Bounds, Ring } from '../../../core/plane/ring.ts';
import type { Survey } from '../../../core/survey.ts';
import type { DeskState } from '../../../desk/desk.ts';
import { crossingHandles } from '../../../desk/gestures/crossing.ts';
import { shownRideEnds } from '../../../desk/gestures/ride-ends.ts';
import { turnHandle } from '../../../desk/gestures/turn-handle.ts';
import { outlines } from '../../../desk/selection/outlines.ts';
import { bendKey, crossKey } from '../../../desk/selection/selection.ts';
import { type Camera, screenAngle, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { trace } from './marks.ts';

/** What is chosen: a halo round its pieces. */
export function paintChosen(
  context: CanvasRenderingContext2D,
  survey: Survey,
  { camera, theme, chosen }: DrawContext & { readonly chosen: readonly string[] },
): void {
  const keys = new Set(chosen);
  for (const obstacle of survey.obstacles) {
    const whole = keys.has(obstacle.obstacle.id);
    for (const piece of obstacle.pieces) {
      if (!whole && !keys.has(piece.key)) continue;
      context.strokeStyle = theme.chosen;
      context.lineWidth = 5;
      context.globalAlpha = 0.32;
      outline(context, piece.footprint, camera);
      context.globalAlpha = 1;
      context.lineWidth = 1.5;
      outline(context, piece.footprint, camera);
    }
  }
}

/** The frame of the selection, and the handle that turns it, where the desk will look for it. */
export function paintHandles(
  context: CanvasRenderingContext2D,
  state: { readonly survey: Survey; readonly chosen: readonly string[] },
  { camera, theme, reach }: DrawContext & { readonly reach: number },
): void {
  context.strokeStyle = theme.chosen;
  context.lineWidth = 1.2;
  context.setLineDash([5, 4]);
  for (const each of outlines(state)) outline(context, each.ring, camera);
  context.setLineDash([]);
  const handle = turnHandle(state, reach);
  if (handle === null) return;
  const root = screenOf(camera, handle.root);
  const at = screenOf(camera, handle.at);
  context.beginPath();
  context.moveTo(root.x, root.y);
  context.lineTo(at.x, at.y);
  context.stroke();
  context.beginPath();
  context.arc(at.x, at.y, 6.5, 0, 2 * Math.PI);
  context.fillStyle = theme.plate;
  context.fill();
  context.lineWidth = 2;
  context.stroke();
}

/** The room that the turn handle takes on the screen. */
export function handleBoxes(
  state: { readonly survey: Survey; readonly chosen: readonly string[] },
  { camera, reach }: { readonly camera: Camera; readonly reach: number },
): readonly Bounds[] {
  const handle = turnHandle(state, reach);
  if (handle === null) return [];
  const { x, y } = screenOf(camera, handle.at);
  return [{ minX: x - 10, maxX: x + 10, minY: y - 10, maxY: y + 10 }];
}

/** The handles of the line: the ends of the go, and its bends where they are wanted. */
export function paintBends(
  context: CanvasRenderingContext2D,
  survey: Survey,
  eye: DrawContext & { readonly chosen: readonly string[]; readonly withBends: boolean },
): void {
  const { legs } = survey.layout.ride;
  const points: readonly { readonly key: string; readonly at: Point }[] = [
    ...shownRideEnds(survey),
    ...(eye.withBends ? legs : []).flatMap((leg) =>
      leg.bends.map((at, index) => ({ key: bendKey(leg.id, index), at })),
    ),
  ];
  for (const { key, at } of points) {
    const place = screenOf(eye.camera, at);
    const isChosen = eye.chosen.includes(key);
    context.beginPath();
    context.arc(place.x, place.y, isChosen ? 8 : 6.5, 0, 2 * Math.PI);
    context.fillStyle = isChosen ? eye.theme.chosen : eye.theme.plate;
    context.fill();
    context.lineWidth = 2;
    context.strokeStyle = eye.theme.chosen;
    context.stroke();
  }
}

/** A crossing handle is this large, and smaller where its neighbours are near. Pixels. */
const CROSSING = 12;
const LEAST_CROSSING = 5.5;

/** The handles where the line crosses the poles of the selection: a disc, with arrows along the pole. */
export function paintCrossings(
  context: CanvasRenderingContext2D,
  state: Pick<DeskState, 'survey' | 'chosen' | 'stage'>,
  { camera, theme }: DrawContext,
): void {
  const handles = crossingHandles(state).map((handle) => ({ handle, at: screenOf(camera, handle.at) }));
  for (const [i, { handle, at }] of handles.entries()) {
    const gaps = [handles[i - 1], handles[i + 1]].flatMap((other) =>
      other === undefined || other.handle.leg !== handle.leg ? [] : [Math.hypot(other.at.x - at.x, other.at.y - at.y)],
    );
    const radius = Math.max(LEAST_CROSSING, Math.min(CROSSING, ...gaps.map((gap) => gap / 2 - 1)));
    const all = crossKey(handle.leg, 'all');
    const isChosen = state.chosen.includes(handle.key) || state.chosen.includes(all);
    context.save();
    context.translate(at.x, at.y);
    context.rotate(screenAngle(camera, handle.pole.pose.angle));
    context.beginPath();
    context.arc(0, 0, radius, 0, 2 * Math.PI);
    context.fillStyle = isChosen ? theme.chosen : theme.plate;
    context.fill();
    context.lineWidth = 2;
    context.strokeStyle = theme.chosen;
    context.stroke();
    context.fillStyle = isChosen ? theme.plate : theme.chosen;
    context.beginPath();
    for (const side of [1, -1]) {
      context.moveTo(side * radius * 0.78, 0);
      context.lineTo(side * radius * 0.25, radius * 0.42);
      context.lineTo(side * radius * 0.25, -radius * 0.42);
      context.closePath();
    }
    context.fill();
    context.restore();
  }
}

function outline(context: CanvasRenderingContext2D, ring: Ring, camera: Camera): void {
  trace(context, ring, camera);
  context.closePath();
  context.stroke();
}
