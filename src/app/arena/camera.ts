import type { Arena } from '../../core/course/course.ts';
import type { Point } from '../../core/plane/point.ts';

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

/** Pixels kept free around the arena when it is fitted: for the numbers along the walls, and for the legend below. */
const EDGE = { left: 42, right: 42, top: 30, bottom: 96 } as const;
/** A picture narrower than this has its buttons above the arena (as in styles/arena.css), and keeps room for them. */
export const NARROW = 700;
const NARROW_TOP = 62;
/** Narrower still and the legend is folded to a button (as in arena/legend.tsx): less is kept free for it. */
export const FOLDED = 480;
const FOLDED_BOTTOM = 62;
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

export function groundOf(camera: Camera, at: Point<'screen'>): Point {
  const right = (at.x - camera.x) / camera.scale;
  const up = (camera.y - at.y) / camera.scale;
  return camera.turned ? { x: up, y: -right } : { x: right, y: up };
}

/** The whole arena in the middle, turned when that shows it clearly larger. */
export function fitCamera(arena: Arena, size: ScreenSize): Camera {
  const width = Math.max(1, size.width - EDGE.left - EDGE.right);
  const top = size.width < NARROW ? NARROW_TOP : EDGE.top;
  const bottom = size.width < FOLDED ? FOLDED_BOTTOM : EDGE.bottom;
  const height = Math.max(1, size.height - top - bottom);
  const lying = Math.min(width / arena.length, height / arena.width);
  const standing = Math.min(width / arena.width, height / arena.length);
  const turned = standing > lying * 1.15;
  const scale = clamped(turned ? standing : lying);
  const middle = centreCamera({ scale, x: 0, y: 0, turned }, { x: arena.length / 2, y: arena.width / 2 }, size);
  // In the middle of the screen where there is room, otherwise in the middle of what the edges leave.
  const tall = (turned ? arena.length : arena.width) * scale;
  const free = (size.height - tall) / 2;
  return panCamera(middle, 0, free < top ? top - free : Math.min(0, free - bottom));
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
