/**
 * The longest rigid rectangle that goes round the right-angled corner of a lane, against the closed form and the values
 * that are printed for it. The sweep is given poles on the ground, as it is in a course; it knows no lane.
 */
import { describe, expect, test } from 'vitest';
import { type Block, turning } from '../../src/core/checks/roomiest.ts';
import { hoofBase } from '../../src/core/checks/sweep.ts';
import { STOCK_HORSE } from '../../src/core/horses/horses.ts';
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
function corner(a: number, b: number): readonly Ring[] {
  return [
    box(-LONG, -THICK, b + THICK, 0),
    box(b, 0, b + THICK, LONG),
    box(-LONG, a, 0, a + THICK),
    box(-THICK, a + THICK, 0, LONG),
  ];
}

/** The least room that the rectangle has on its best way round. */
function room(rings: readonly Ring[], length: number, width: number, [a, b]: readonly [number, number]): number {
  const blocks = rings.map((ring): Block => ({ ring, base: { length, width } }));
  const into = { x: b - length / 2, y: a / 2, angle: 0 };
  const outOf = { x: b / 2, y: length / 2, angle: Math.PI / 2 };
  return Math.min(...turning(blocks, into, outOf).map(({ clear }) => clear));
}

/** Where something that grows with the value turns from not passing to passing, or the other way round. */
function threshold(low: number, high: number, isBelow: (value: number) => boolean): number {
  let [from, to] = [low, high];
  for (let i = 0; i < 30; i += 1) {
    const middle = (from + to) / 2;
    if (isBelow(middle)) from = middle;
    else to = middle;
  }
  return from;
}

/** L = min over t of (a cos t + b sin t − w)/(sin t cos t); worked out here by looking everywhere. */
function closedForm(a: number, b: number, w: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < 20_000; i += 1) {
    const t = (Math.PI / 2) * (i / 20_000);
    least = Math.min(least, (a * Math.cos(t) + b * Math.sin(t) - w) / (Math.sin(t) * Math.cos(t)));
  }
  return least;
}

/** Widths of both legs and of the rectangle in any one unit, and the longest that passes. */
const ROWS = [
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
const SCALE = 0.15;

describe('the longest rectangle round a right corner', () => {
  test.each(ROWS)('legs of $a and $b, width $w: $longest ($source)', ({ a, b, w, longest }) => {
    expect(closedForm(a, b, w)).toBeCloseTo(longest, 5);
    const legs = [a * SCALE, b * SCALE] as const;
    const rings = corner(...legs);
    const found = threshold(0, 1.5 * longest * SCALE, (length) => room(rings, length, w * SCALE, legs) >= 0);
    expect(Math.abs(found / (longest * SCALE) - 1)).toBeLessThan(0.001);
  });
});

describe('the narrowest L', () => {
  // 5 ft: the mule's wheelbase, American Mule Association rule 216. The widths follow from 2√2·a = L + 2w.
  test.each([
    [1.524, 0.33, 30.4],
    [1.25, 0.35, 27.14],
  ] as const)('a hoof base of %f by %f m goes round an L of %f in', (length, width, inches) => {
    const least = threshold(0.4, 1.2, (lane) => room(corner(lane, lane), length, width, [lane, lane]) < 0);
    expect(least / 0.0254).toBeCloseTo(inches, 1);
    expect((length + 2 * width) / (2 * Math.SQRT2) / 0.0254).toBeCloseTo(inches, 1);
  });

  test('our stock horse, measured over its hooves, needs more than the 30 in of a rule book in a sharp corner', () => {
    const { length, width } = hoofBase(STOCK_HORSE);
    const least = threshold(0.4, 1.2, (lane) => room(corner(lane, lane), length, width, [lane, lane]) < 0);
    expect(least / 0.0254).toBeCloseTo(30.72, 1);
  });
});
