/** The lane round a right-angled corner, laid as poles for the sweep, and what is published about it: for tests and bench. */
import type { BlockedRegion } from '../../src/core/checks/geometry/max-clearance.ts';
import { turnMotion } from '../../src/core/checks/geometry/turn-motion.ts';
import type { Ring } from '../../src/core/plane/ring.ts';

/** Poles as thick as a hand and as long as it takes, metres. */
const THICK = 0.1;
const LONG = 8;

function box(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
}

/** A leg of width `a` along x, then one of width `b` along y; a sharp inner corner. */
export function corner(a: number, b: number): readonly Ring[] {
  return [
    box(-LONG, -THICK, b + THICK, 0),
    box(b, 0, b + THICK, LONG),
    box(-LONG, a, 0, a + THICK),
    box(-THICK, a + THICK, 0, LONG),
  ];
}

/** The least room that the rectangle has on its best way round. */
export function room(rings: readonly Ring[], length: number, width: number, [a, b]: readonly [number, number]): number {
  const blocks = rings.map((ring): BlockedRegion => ({ ring, base: { length, width } }));
  const into = { x: b / 2 - length / 2, y: a / 2, angle: 0 };
  const middle = { x: b / 2, y: a / 2 };
  const outOf = { x: b / 2, y: a / 2 + length / 2, angle: Math.PI / 2 };
  const poses = [into, { ...middle, angle: 0 }, { ...middle, angle: Math.PI / 2 }, outOf];
  return Math.min(...turnMotion(blocks, poses).map(({ clear }) => clear));
}

/** Where something that grows with the value turns from not passing to passing, or the other way round. */
export function threshold(low: number, high: number, isBelow: (value: number) => boolean): number {
  let [from, to] = [low, high];
  for (let i = 0; i < 30; i += 1) {
    const middle = (from + to) / 2;
    if (isBelow(middle)) from = middle;
    else to = middle;
  }
  return from;
}

/** Widths of both legs and of the rectangle in any one unit, and the longest that passes. */
export const ROWS = [
  { a: 3, b: 4, w: 0, longest: 9.8656626, source: 'halls of 3 and 4 ft: the textbooks’ 9.87' },
  { a: 2, b: 3, w: 0, longest: 7.0234824, source: 'J. Loy, the moving ladder problem, 2003' },
  { a: 1, b: 1, w: 0, longest: 2.8284271, source: '2√2, the same' },
  {
    a: 8,
    b: 3,
    w: 1,
    longest: 12.8563176,
    source: 'Moretti, College Math. J. 33(3), 2002, pp. 196–200: 12.8927 at 31°',
  },
  { a: 3, b: 3, w: 1, longest: 6.4852814, source: '2√2·a − 2w' },
  { a: 7 / 3, b: 7 / 3, w: 5 / 6, longest: 4.9329966, source: '2√2·a − 2w' },
  { a: 4, b: 3, w: 1, longest: 7.852987, source: 'the closed form' },
] as const;
/** The rows in metres of a size at which the poles are poles. */
export const SCALE = 0.15;

/** The longest rectangle of a width that the sweep takes round, metres. */
export function longestRound([a, b]: readonly [number, number], width: number, most: number): number {
  const rings = corner(a, b);
  return threshold(0, most, (length) => room(rings, length, width, [a, b]) >= 0);
}

/** The narrowest lane of equal legs round which the sweep takes a hoof base, metres. */
export function narrowestLane({ length, width }: { readonly length: number; readonly width: number }): number {
  return threshold(0.4, 1.2, (lane) => room(corner(lane, lane), length, width, [lane, lane]) < 0);
}
