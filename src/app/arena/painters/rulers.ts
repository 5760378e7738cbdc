import type { Arena } from '../../../core/course/course.ts';
import { FOOT, type LengthUnit } from '../../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Point } from '../../../core/plane/point.ts';
import { type Bounds, boundsIntersect } from '../../../core/plane/ring.ts';
import { type Camera, screenOf } from '../camera.ts';
import { leafOf, railWidth, wayInBox } from './rail.ts';
import { LETTERS, textWidth } from './typeface.ts';

/** Numbers along a wall stand at least so far apart, and so far outside the rail. Pixels. */
const APART = 56;
const OUT = 4;

/** A number along a wall, and the room that it takes on the screen. */
export interface RulerMark {
  readonly text: string;
  readonly box: Bounds;
}

/** Distances along the wall with x (from the west) and the wall with y (from the south), clear of the way in and its leaf. */
export const rulerMarks = memoizeByIdentity((arena: Arena, unit: LengthUnit, camera: Camera): readonly RulerMark[] => {
  const one = unit === 'ft' ? FOOT : 1;
  const steps = unit === 'ft' ? [10, 20, 50, 100] : [5, 10, 20, 50];
  const step = steps.find((each) => each * one * camera.scale >= APART) ?? 100;
  const out = railWidth(camera) + OUT;
  const taken = [wayInBox(arena, camera), leafBox(arena, camera)];
  const [low, high] = [screenOf(camera, { x: 0, y: 0 }), screenOf(camera, { x: arena.length, y: arena.width })];
  const reach = [Math.min(low.x, high.x), Math.max(low.x, high.x)] as const;
  const along = (most: number, place: (n: number) => Point, side: 'below' | 'left' | 'right') => {
    const marks: RulerMark[] = [];
    for (let n = step; n * one <= most + 1e-6; n += step) {
      const text = unit === 'ft' ? `${n}′` : `${n}`;
      const at = screenOf(camera, place(n * one));
      const box = boxBeside(at, { width: textWidth(text, 'regular'), side, out, reach });
      if (!taken.some((each) => boundsIntersect(each, box, 0))) marks.push({ text, box });
    }
    return marks;
  };
  return [
    ...along(arena.length, (x) => ({ x, y: 0 }), camera.turned ? 'right' : 'below'),
    ...along(arena.width, (y) => ({ x: 0, y }), camera.turned ? 'below' : 'left'),
  ];
});

interface Beside {
  readonly width: number;
  readonly side: 'below' | 'left' | 'right';
  readonly out: number;
  /** From where to where on the screen the wall runs: the last number ends with it. */
  readonly reach: readonly [number, number];
}

function boxBeside({ x, y }: Point<'screen'>, { width, side, out, reach }: Beside): Bounds {
  const half = LETTERS / 2 + 1;
  if (side === 'left') return { minX: x - out - width, maxX: x - out, minY: y - half, maxY: y + half };
  if (side === 'right') return { minX: x + out, maxX: x + out + width, minY: y - half, maxY: y + half };
  const minX = Math.max(reach[0], Math.min(reach[1] - width, x - width / 2));
  return { minX, maxX: minX + width, minY: y + out, maxY: y + out + 2 * half };
}

function leafBox(arena: Arena, camera: Camera): Bounds {
  const { hinge, end } = leafOf(arena);
  const [a, b] = [screenOf(camera, hinge), screenOf(camera, end)];
  return {
    minX: Math.min(a.x, b.x) - 3,
    maxX: Math.max(a.x, b.x) + 3,
    minY: Math.min(a.y, b.y) - 3,
    maxY: Math.max(a.y, b.y) + 3,
  };
}
