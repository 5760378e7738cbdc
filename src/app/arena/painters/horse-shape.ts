/** The outline of a horse from above, in trunk lengths along and trunk widths across; +x is forward, nose to the right. */

type Place = readonly [along: number, across: number];

/** Left half of the body from the dock to the poll: hindquarters, flank, barrel, shoulder, neck. */
const BODY: readonly Place[] = [
  [-0.53, 0],
  [-0.53, 0.3],
  [-0.4, 0.56],
  [-0.2, 0.54],
  [-0.04, 0.44],
  [0.14, 0.48],
  [0.3, 0.53],
  [0.46, 0.42],
  [0.56, 0.28],
  [0.7, 0.22],
  [0.84, 0.18],
];
/** Left half of the head from the poll to the nose. */
const HEAD: readonly Place[] = [
  [0.8, 0.12],
  [0.85, 0.25],
  [0.95, 0.22],
  [1.06, 0.14],
  [1.13, 0.15],
  [1.17, 0.08],
  [1.175, 0],
];
const EAR: readonly Place[] = [
  [0.8, 0.07],
  [0.775, 0.17],
  [0.845, 0.15],
];
/** Root to tip. */
const TAIL: readonly Place[] = [
  [-0.5, 0.07],
  [-0.66, 0.13],
  [-0.8, 0.02],
  [-0.66, -0.05],
  [-0.5, -0.07],
];
/** A western saddle: its blanket, its skirt, and the seat with the horn before it. */
const BLANKET = { back: -0.2, front: 0.24, half: 0.49 } as const;
const SKIRT = { back: -0.17, front: 0.19, half: 0.36 } as const;

/** The parts of a horse as paths, ready to fill and stroke. Lengths in pixels: of its trunk and of its width. */
export interface HorseShape {
  readonly tail: Path2D;
  readonly body: Path2D;
  readonly head: Path2D;
  readonly ears: Path2D;
  readonly mane: Path2D;
  readonly blanket: Path2D;
  readonly skirt: Path2D;
  readonly seat: Path2D;
}

export function horseShape(long: number, wide: number): HorseShape {
  const at = ([x, y]: Place): Place => [x * long, y * wide];
  const both = (half: readonly Place[]) => smooth([...half, ...mirrored(half)].map(at));
  const ears = new Path2D();
  for (const side of [1, -1]) {
    EAR.map(([x, y]) => at([x, side * y])).forEach(([x, y], i) => {
      if (i === 0) ears.moveTo(x, y);
      else ears.lineTo(x, y);
    });
    ears.closePath();
  }
  const mane = new Path2D();
  mane.moveTo(...at([0.42, 0]));
  mane.quadraticCurveTo(...at([0.62, 0.05]), ...at([0.86, 0.01]));
  const seat = new Path2D();
  seat.ellipse(...at([-0.01, 0]), 0.13 * long, 0.19 * wide, 0, 0, 2 * Math.PI);
  seat.moveTo(...at([0.19, 0]));
  seat.arc(...at([0.155, 0]), 0.035 * long, 0, 2 * Math.PI);
  return {
    tail: smooth(TAIL.map(at)),
    body: both(BODY),
    head: both(HEAD),
    ears,
    mane,
    blanket: box(BLANKET, { long, wide, corner: 0.04 }),
    skirt: box(SKIRT, { long, wide, corner: 0.09 }),
    seat,
  };
}

function mirrored(half: readonly Place[]): readonly Place[] {
  return half
    .filter(([, y]) => y !== 0)
    .toReversed()
    .map(([x, y]) => [x, -y]);
}

/** A closed curve that passes the middles between its corners. */
function smooth(corners: readonly Place[]): Path2D {
  const path = new Path2D();
  const middle = (i: number): Place => {
    const [a, b] = [corners[i % corners.length], corners[(i + 1) % corners.length]];
    if (a === undefined || b === undefined) throw new Error('smooth: a curve has corners');
    return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  };
  path.moveTo(...middle(corners.length - 1));
  corners.forEach((corner, i) => {
    path.quadraticCurveTo(corner[0], corner[1], ...middle(i));
  });
  path.closePath();
  return path;
}

/** A box with round corners across the back. */
function box(
  { back, front, half }: { readonly back: number; readonly front: number; readonly half: number },
  { long, wide, corner }: { readonly long: number; readonly wide: number; readonly corner: number },
): Path2D {
  const path = new Path2D();
  path.roundRect(back * long, -half * wide, (front - back) * long, 2 * half * wide, corner * long);
  return path;
}
