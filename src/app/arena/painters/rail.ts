import type { Arena } from '../../../core/course/course.ts';
import type { Metres } from '../../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Point } from '../../../core/plane/point.ts';
import type { Bounds } from '../../../core/plane/ring.ts';
import { arenaWords } from '../../../words/arena.ts';
import { type Camera, screenOf } from '../camera.ts';
import type { DrawContext } from './draw-context.ts';
import { font, LETTERS, textWidth } from './typeface.ts';

/** The width of the board, outside the arena, and the least that it is drawn, pixels. */
const BOARD: Metres = 0.14;
const LEAST_BOARD = 3;
/** Posts stand about so far apart: a panel of common practice. Farther where they would run together. */
const PANEL: Metres = 2.44;
const LEAST_PANEL = 26;
const POST: Metres = 0.2;
const LEAST_POST = 5;
/** How far the leaf stands open: nearly back against the rail, so that it is seen as a leaf and is in nobody's way. */
const OPEN = (158 * Math.PI) / 180;
/** The bars of the leaf between its stiles. */
const BARS = 3;
/** From the arena's edge to the middle of the words at the way in, pixels. */
const WORDS_OUT = 15;

export const WAY_IN = arenaWords.in;

/** A point on the wall of the way in, so far along it from its west or south end, and so far outside. */
function onWall({ entrance, length, width }: Arena, along: Metres, out: Metres): Point {
  switch (entrance.wall) {
    case 'south':
      return { x: along, y: -out };
    case 'north':
      return { x: along, y: width + out };
    case 'west':
      return { x: -out, y: along };
    case 'east':
      return { x: length + out, y: along };
  }
}

/** How wide the rail is drawn, with its posts. Pixels. */
export function railWidth(camera: Camera): number {
  return Math.max(LEAST_POST, POST * camera.scale);
}

/** The room on the screen that the words at the way in take. */
export const wayInBox = memoizeByIdentity((arena: Arena, camera: Camera): Bounds => {
  const out = (railWidth(camera) + WORDS_OUT) / camera.scale;
  const { x, y } = screenOf(camera, onWall(arena, arena.entrance.at, out));
  const half = textWidth(WAY_IN, 'bold') / 2 + 4;
  return { minX: x - half, maxX: x + half, minY: y - LETTERS / 2 - 3, maxY: y + LETTERS / 2 + 3 };
});

/** The room on the screen that the four rails take. */
export const wallBoxes = memoizeByIdentity(({ length, width }: Arena, camera: Camera): readonly Bounds[] => {
  const low = screenOf(camera, { x: 0, y: 0 });
  const high = screenOf(camera, { x: length, y: width });
  const rail = railWidth(camera);
  const [minX, maxX] = [Math.min(low.x, high.x) - rail, Math.max(low.x, high.x) + rail];
  const [minY, maxY] = [Math.min(low.y, high.y) - rail, Math.max(low.y, high.y) + rail];
  return [
    { minX, maxX, minY, maxY: minY + rail },
    { minX, maxX, minY: maxY - rail, maxY },
    { minX, maxX: minX + rail, minY, maxY },
    { minX: maxX - rail, maxX, minY, maxY },
  ];
});

/** The open leaf of the way in: its hinge, and its far end on the ground. */
export function leafOf(arena: Arena): { readonly hinge: Point; readonly end: Point } {
  const { at, width, wall } = arena.entrance;
  const long = wall === 'south' || wall === 'north' ? arena.length : arena.width;
  // Hinged at the jamb beside which there is rail for it to lie against.
  const side = at + width * 1.5 <= long ? 1 : -1;
  const hinge = at + (side * width) / 2;
  return {
    hinge: onWall(arena, hinge, 0),
    end: onWall(arena, hinge - side * width * Math.cos(OPEN), width * Math.sin(OPEN)),
  };
}

/** The boards with their posts round the ground, and the way in with its leaf. */
export function paintRail(context: CanvasRenderingContext2D, arena: Arena, draw: DrawContext): void {
  const { camera, theme } = draw;
  const board = Math.max(LEAST_BOARD, BOARD * camera.scale);
  const out = board / 2 / camera.scale;
  const { length, width } = arena;
  const corners: readonly Point[] = [
    { x: -out, y: -out },
    { x: length + out, y: -out },
    { x: length + out, y: width + out },
    { x: -out, y: width + out },
  ];
  const runs = corners.flatMap((from, i) => {
    const to = corners[(i + 1) % corners.length] ?? from;
    return withoutWayIn(arena, [from, to], i, out);
  });
  const trace = (aside: number) => {
    context.beginPath();
    for (const [from, to] of runs) {
      const [a, b] = [screenOf(camera, from), screenOf(camera, to)];
      context.moveTo(a.x + aside, a.y + aside);
      context.lineTo(b.x + aside, b.y + aside);
    }
  };
  context.lineCap = 'square';
  context.lineJoin = 'miter';
  for (const [aside, colour, wide] of [
    [board * 0.6, theme.shadow, board],
    [0, theme.inks.rail, board + 1.4],
    [0, theme.railSide, board - 0.6],
  ] as const) {
    trace(aside);
    context.strokeStyle = colour;
    context.lineWidth = wide;
    context.stroke();
  }
  context.lineCap = 'butt';
  const post = railWidth(camera);
  context.fillStyle = theme.inks.rail;
  context.beginPath();
  for (const [from, to] of runs) {
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    const panels = Math.max(1, Math.round(long / Math.max(PANEL, LEAST_PANEL / camera.scale)));
    for (let i = 0; i <= panels; i++) {
      const t = i / panels;
      const at = screenOf(camera, { x: from.x + t * (to.x - from.x), y: from.y + t * (to.y - from.y) });
      context.rect(at.x - post / 2, at.y - post / 2, post, post);
    }
  }
  context.fill();
  paintWayIn(context, arena, draw);
}

const WALLS = ['south', 'east', 'north', 'west'] as const;

/** The rail along one side, in two parts where the way in is. `index` is of the side, from the south round by the east. */
function withoutWayIn(
  arena: Arena,
  [from, to]: readonly [Point, Point],
  index: number,
  out: Metres,
): readonly (readonly [Point, Point])[] {
  const { wall, at, width } = arena.entrance;
  if (WALLS[index] !== wall) return [[from, to]];
  const [low, high] = [onWall(arena, at - width / 2, out), onWall(arena, at + width / 2, out)];
  // The south and east sides run with the measure along their wall, the others against it.
  return index < 2
    ? [
        [from, low],
        [high, to],
      ]
    : [
        [from, high],
        [low, to],
      ];
}

function paintWayIn(context: CanvasRenderingContext2D, arena: Arena, { camera, theme }: DrawContext): void {
  const leaf = leafOf(arena);
  const [hinge, end] = [screenOf(camera, leaf.hinge), screenOf(camera, leaf.end)];
  const long = Math.hypot(end.x - hinge.x, end.y - hinge.y) || 1;
  const along = { x: (end.x - hinge.x) / long, y: (end.y - hinge.y) / long };
  const half = Math.max(2.4, 0.09 * camera.scale);
  const bar = (aside: number) => {
    context.moveTo(hinge.x - along.y * aside, hinge.y + along.x * aside);
    context.lineTo(end.x - along.y * aside, end.y + along.x * aside);
  };
  context.lineCap = 'butt';
  context.strokeStyle = theme.inks.metal;
  context.lineWidth = Math.max(1.1, half * 0.32);
  context.beginPath();
  for (let i = 0; i < BARS; i++) bar(half * ((2 * i) / (BARS - 1) - 1));
  for (const t of [0, 0.5, 1]) {
    const [x, y] = [hinge.x + along.x * long * t, hinge.y + along.y * long * t];
    context.moveTo(x - along.y * half, y + along.x * half);
    context.lineTo(x + along.y * half, y - along.x * half);
  }
  context.stroke();
  const post = railWidth(camera) * 0.72;
  context.fillStyle = theme.inks.metal;
  context.strokeStyle = theme.inks.outline;
  context.lineWidth = 1;
  const { at, width } = arena.entrance;
  for (const jamb of [at - width / 2, at + width / 2]) {
    const { x, y } = screenOf(camera, onWall(arena, jamb, 0));
    context.beginPath();
    context.arc(x, y, post, 0, 2 * Math.PI);
    context.fill();
    context.stroke();
  }
  const box = wayInBox(arena, camera);
  context.font = font('bold');
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillStyle = theme.inks.words;
  context.fillText(WAY_IN, (box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2 + 0.5);
}
