import type { Arena } from '../../core/course/course.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Bounds } from '../../core/plane/ring.ts';

/** The transform from ground to screen: +y up the screen, or turned a quarter so that +x runs up it (tall screens). */
export interface Camera {
  /** Pixels a metre. */
  readonly scale: number;
  /** Where the arena's datum corner is on the screen, pixels. */
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface ScreenSize {
  readonly width: number;
  readonly height: number;
}

/** What stands round the fitted arena, pixels: its rail, and the numbers along two walls. */
const RAIL_ROOM = 14;
const NUMBERS_LEFT = 46;
const NUMBERS_BELOW = 28;
/** A button with what parts it from the edge of the picture, and with the air before it. Pixels: as in styles/arena.css. */
const BUTTON = 56;
const BUTTON_ROOM = 62;
/** In a picture lower than this the buttons beside the arena stand in two columns: six, and the one of the legend. */
const SHORT = 350;
/** The width of the buttons below the arena with their words, and in a picture narrower than `WORDED` without. */
const WORDED = 700;
const BUTTONS_WIDTH = { worded: 470, plain: 290 } as const;
/** The least width of an open legend beside them, for two rows. */
const LEGEND_WIDTH = 320;
/** The legend stands open in one row where so much is free below the arena's numbers. */
const LEGEND_ROOM = 40;
/** A picture narrower than this has its legend folded, and its hint says less. */
export const FOLDED = 480;
const LEAST_SCALE = 1.5;
const MOST_SCALE = 400;

export function screenOf(camera: Camera, at: Point): Point<'screen'> {
  return camera.turned
    ? { x: camera.x - at.y * camera.scale, y: camera.y - at.x * camera.scale }
    : { x: camera.x + at.x * camera.scale, y: camera.y - at.y * camera.scale };
}

/** The direction on the screen of a heading on the ground. */
export function screenAngle(camera: Camera, angle: number): number {
  return camera.turned ? -angle - Math.PI / 2 : -angle;
}

/** A direction as it is seen on the screen. */
export type ScreenStep = 'up' | 'down' | 'left' | 'right';

const LYING_STEPS = { up: [0, 1], down: [0, -1], left: [-1, 0], right: [1, 0] } as const;
const TURNED_STEPS = { up: [1, 0], down: [-1, 0], left: [0, 1], right: [0, -1] } as const;

/** The same direction on the ground, of length 1. */
export function groundStep(turned: boolean, step: ScreenStep): readonly [number, number] {
  return (turned ? TURNED_STEPS : LYING_STEPS)[step];
}

export function groundOf(camera: Camera, at: Point<'screen'>): Point {
  const right = (at.x - camera.x) / camera.scale;
  const up = (camera.y - at.y) / camera.scale;
  return camera.turned ? { x: up, y: -right } : { x: right, y: up };
}

/** Where the buttons of the arena stand, and whether its legend is open: off the ground of the fitted arena. */
export interface Furniture {
  readonly buttons: 'beside' | 'beside-in-two' | 'below';
  readonly isLegendOpen: boolean;
  /** There is no width for a legend beside anything. */
  readonly isNarrow: boolean;
}

interface Fit {
  readonly camera: Camera;
  readonly furniture: Furniture;
}

/** The whole arena as large as the picture has room for it, beside or above its buttons. */
export function fitCamera(arena: Arena, size: ScreenSize): Camera {
  return bestFit(arena, size).camera;
}

/** Where the buttons stand so that the fitted arena is largest. */
export function arenaFurniture(arena: Arena, size: ScreenSize): Furniture {
  return bestFit(arena, size).furniture;
}

const bestFit = memoizeByIdentity((arena: Arena, size: ScreenSize): Fit => {
  const beside = size.height < SHORT ? 'beside-in-two' : 'beside';
  const fits = ([beside, 'below'] as const).flatMap((buttons) =>
    [false, true].map((turned) => fitWith(arena, size, { buttons, turned })),
  );
  const [lyingBeside, standingBeside, lyingBelow, standingBelow] = fits as [Fit, Fit, Fit, Fit];
  const lying = larger(lyingBelow, lyingBeside);
  const standing = larger(standingBelow, standingBeside);
  // A turn has to be earned: north is up on the sheets.
  return standing.camera.scale > lying.camera.scale * 1.15 ? standing : lying;
});

/** The room on the screen that the buttons take, and beside them the legend. */
export function furnitureBounds({ buttons }: Furniture, { width, height }: ScreenSize): Bounds {
  if (buttons === 'below') return { minX: 0, maxX: width, minY: height - BUTTON, maxY: height };
  return { minX: width - BUTTON * (buttons === 'beside' ? 1 : 2), maxX: width, minY: 0, maxY: height };
}

/** The second only if it is clearly larger. */
function larger(first: Fit, second: Fit): Fit {
  return second.camera.scale > first.camera.scale * 1.02 ? second : first;
}

function fitWith(
  arena: Arena,
  size: ScreenSize,
  { buttons, turned }: { readonly buttons: Furniture['buttons']; readonly turned: boolean },
): Fit {
  // Numbers stand left of a lying arena, and right of a standing one.
  const numbers = turned ? { left: RAIL_ROOM, right: NUMBERS_LEFT } : { left: NUMBERS_LEFT, right: RAIL_ROOM };
  const columns = buttons === 'below' ? 0 : buttons === 'beside' ? 1 : 2;
  const left = numbers.left;
  const right = columns === 0 ? numbers.right : Math.max(0, numbers.right - RAIL_ROOM) + BUTTON_ROOM * columns;
  const top = RAIL_ROOM;
  const bottom = NUMBERS_BELOW + (buttons === 'below' ? BUTTON_ROOM : 0);
  const width = Math.max(1, size.width - left - right);
  const height = Math.max(1, size.height - top - bottom);
  const [wide, tall] = turned ? [arena.width, arena.length] : [arena.length, arena.width];
  const scale = clamped(Math.min(width / wide, height / tall));
  const middle = { x: left + width / 2, y: top + height / 2 };
  const camera: Camera = turned
    ? { scale, turned, x: middle.x + (wide * scale) / 2, y: middle.y + (tall * scale) / 2 }
    : { scale, turned, x: middle.x - (wide * scale) / 2, y: middle.y + (tall * scale) / 2 };
  const free = size.height - camera.y - NUMBERS_BELOW;
  const isNarrow = size.width < FOLDED;
  const beside = size.width - (size.width < WORDED ? BUTTONS_WIDTH.plain : BUTTONS_WIDTH.worded);
  const isLegendOpen = !isNarrow && (buttons === 'below' ? beside >= LEGEND_WIDTH : free >= LEGEND_ROOM);
  return { camera, furniture: { buttons, isLegendOpen, isNarrow } };
}

/** Zoomed so that what is under `about` stays under it. */
export function zoomCamera(camera: Camera, factor: number, about: Point<'screen'>): Camera {
  const scale = clamped(camera.scale * factor);
  const real = scale / camera.scale;
  return {
    ...camera,
    scale,
    x: about.x + (camera.x - about.x) * real,
    y: about.y + (camera.y - about.y) * real,
  };
}

export function panCamera(camera: Camera, dx: number, dy: number): Camera {
  return { ...camera, x: camera.x + dx, y: camera.y + dy };
}

/** With the given place on the ground in the middle of the screen. */
export function centreCamera(camera: Camera, at: Point, size: ScreenSize): Camera {
  const now = screenOf(camera, at);
  return panCamera(camera, size.width / 2 - now.x, size.height / 2 - now.y);
}

function clamped(scale: number): number {
  return Math.min(MOST_SCALE, Math.max(LEAST_SCALE, scale));
}
