import type { Arena } from '../../../core/course/course.ts';
import type { LengthUnit, Metres } from '../../../core/measure/quantity.ts';
import { FOOT } from '../../../core/measure/quantity.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { Theme } from './inks.ts';
import { trace } from './marks.ts';
import { font } from './typeface.ts';

/** Width of the drawn rail, outside the arena. */
const RAIL: Metres = 0.32;

/** Paints the ground: sand, grid, rail with its posts, the way in, and numbers along two walls. */
export function paintGround(
  context: CanvasRenderingContext2D,
  {
    arena,
    unit,
    camera,
    theme,
  }: {
    readonly arena: Arena;
    readonly unit: LengthUnit;
    readonly camera: Camera;
    readonly theme: Theme;
  },
): void {
  const at = (x: number, y: number) => screenOf(camera, { x, y });
  const low = at(0, 0);
  const high = at(arena.length, arena.width);
  const [left, top] = [Math.min(low.x, high.x), Math.min(low.y, high.y)];
  const [width, height] = [Math.abs(high.x - low.x), Math.abs(high.y - low.y)];
  const rail = Math.max(5, RAIL * camera.scale);

  context.fillStyle = theme.railSide;
  context.fillRect(left - rail, top - rail, width + 2 * rail, height + 2 * rail);
  context.fillStyle = theme.ground;
  context.fillRect(left, top, width, height);

  const step = unit === 'ft' ? 10 * FOOT : 5;
  context.strokeStyle = theme.grid;
  context.lineWidth = 1;
  context.beginPath();
  for (let x = step; x < arena.length - 1e-6; x += step) segment(context, at(x, 0), at(x, arena.width));
  for (let y = step; y < arena.width - 1e-6; y += step) segment(context, at(0, y), at(arena.length, y));
  context.stroke();

  context.strokeStyle = theme.inks.rail;
  context.lineWidth = 2;
  context.strokeRect(left - 1, top - 1, width + 2, height + 2);
  context.lineWidth = 1;
  context.strokeRect(left - rail - 0.5, top - rail - 0.5, width + 2 * rail + 1, height + 2 * rail + 1);
  posts(context, { left, top, width, height, rail, every: step * camera.scale, colour: theme.inks.rail });
  wayIn(context, { arena, camera, theme, rail });
  numbers(context, { arena, unit, camera, theme, rail });
}

function segment(context: CanvasRenderingContext2D, a: Point<'screen'>, b: Point<'screen'>): void {
  context.moveTo(Math.round(a.x) + 0.5, Math.round(a.y) + 0.5);
  context.lineTo(Math.round(b.x) + 0.5, Math.round(b.y) + 0.5);
}

function posts(
  context: CanvasRenderingContext2D,
  box: { left: number; top: number; width: number; height: number; rail: number; every: number; colour: string },
): void {
  context.fillStyle = box.colour;
  const half = Math.max(1.5, box.rail * 0.28);
  const post = (x: number, y: number) => context.fillRect(x - half, y - half, 2 * half, 2 * half);
  const across = Math.max(1, Math.round(box.width / box.every));
  const down = Math.max(1, Math.round(box.height / box.every));
  for (let i = 0; i <= across; i++) {
    const x = box.left + (box.width * i) / across;
    post(x, box.top - box.rail / 2);
    post(x, box.top + box.height + box.rail / 2);
  }
  for (let i = 0; i <= down; i++) {
    const y = box.top + (box.height * i) / down;
    post(box.left - box.rail / 2, y);
    post(box.left + box.width + box.rail / 2, y);
  }
}

/** A point on a wall, so far along it from its west or south end, and so far outside. */
function onWall(arena: Arena, along: Metres, out: Metres): Point {
  switch (arena.entrance.wall) {
    case 'south':
      return { x: along, y: -out };
    case 'north':
      return { x: along, y: arena.width + out };
    case 'west':
      return { x: -out, y: along };
    case 'east':
      return { x: arena.length + out, y: along };
  }
}

function wayIn(
  context: CanvasRenderingContext2D,
  { arena, camera, theme, rail }: { arena: Arena; camera: Camera; theme: Theme; rail: number },
): void {
  const { at, width } = arena.entrance;
  const thick = (rail + 3) / camera.scale;
  const corners = [
    onWall(arena, at - width / 2, -1 / camera.scale),
    onWall(arena, at + width / 2, -1 / camera.scale),
    onWall(arena, at + width / 2, thick),
    onWall(arena, at - width / 2, thick),
  ];
  context.fillStyle = theme.ground;
  trace(context, corners, camera);
  context.fill();
  context.fillStyle = theme.inks.rail;
  for (const end of [at - width / 2, at + width / 2]) {
    const post = screenOf(camera, onWall(arena, end, rail / 2 / camera.scale));
    context.beginPath();
    context.arc(post.x, post.y, Math.max(3.5, rail * 0.55), 0, 2 * Math.PI);
    context.fill();
  }
  const words = screenOf(camera, onWall(arena, at, (rail + 11) / camera.scale));
  context.font = font('bold');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = theme.inks.words;
  context.fillText('In', words.x, words.y);
}

/** Distances along the wall with x (from the west) and the wall with y (from the south). */
function numbers(
  context: CanvasRenderingContext2D,
  { arena, unit, camera, theme, rail }: { arena: Arena; unit: LengthUnit; camera: Camera; theme: Theme; rail: number },
): void {
  const one = unit === 'ft' ? FOOT : 1;
  const steps = unit === 'ft' ? [10, 20, 50, 100] : [5, 10, 20, 50];
  const step = steps.find((each) => each * one * camera.scale >= 54) ?? 100;
  context.font = font('regular');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = theme.inks.words;
  context.globalAlpha = 0.72;
  const away = (rail + 11) / camera.scale;
  const { entrance } = arena;
  const isClear = (wall: string, along: Metres) =>
    entrance.wall !== wall || Math.abs(along - entrance.at) * camera.scale > 22;
  context.textAlign = camera.turned ? 'start' : 'center';
  for (let n = step; n * one <= arena.length + 1e-6; n += step) {
    const place = screenOf(camera, { x: n * one, y: camera.turned ? -(rail + 5) / camera.scale : -away });
    if (isClear('south', n * one)) context.fillText(label(n, unit), place.x, place.y);
  }
  context.textAlign = camera.turned ? 'center' : 'end';
  for (let n = step; n * one <= arena.width + 1e-6; n += step) {
    const place = screenOf(camera, { x: camera.turned ? -away : -(rail + 5) / camera.scale, y: n * one });
    if (isClear('west', n * one)) context.fillText(label(n, unit), place.x, place.y);
  }
  context.globalAlpha = 1;
}

function label(n: number, unit: LengthUnit): string {
  return unit === 'ft' ? `${n}′` : `${n}`;
}
