/** Shortest bounded-curvature paths against numbers that others published. */
import { describe, expect, test } from 'vitest';
import { type DubinsWord, dubinsParts, shortestDubinsPath } from '../../src/core/plane/dubins.ts';
import { dubinsThroughWaypoints } from '../../src/core/plane/dubins-waypoints.ts';
import { pathEnd } from '../../src/core/plane/path.ts';
import { pose } from '../../src/core/plane/pose.ts';

const DOWN = -Math.PI / 2;
const UP = Math.PI / 2;

/** L. E. Dubins, 1957; test values of A. Walker's open-source path library, re-computed independently to 1e-9. */
const SHORTEST: readonly (readonly [number, number, number, DubinsWord, number])[] = [
  [DOWN, DOWN, 0.2, 'LSL', 6.48318530717959],
  [DOWN, DOWN, 10, 'LSR', 11.3929198562888],
  [DOWN, 0, 0.2, 'LRL', 6.55040413938824],
  [DOWN, 0, 0.6, 'LRL', 6.76349065953723],
  [DOWN, 0, 1.2, 'RSL', 7.16525789196279],
  [DOWN, 0, 10, 'LSR', 10.6266413247664],
  [DOWN, UP, 0.2, 'RLR', 7.09532100929441],
  [DOWN, UP, 0.6, 'RLR', 6.59444021386796],
  [DOWN, UP, 1.2, 'RLR', 5.71559708876293],
  [DOWN, UP, 10, 'LSL', 11.1415926535898],
  [0, DOWN, 1.2, 'RSL', 7.16525789196279],
  [0, DOWN, 10, 'LSR', 10.6266413247664],
];

/** Words that are not the shortest, from the same values; `undefined`: the word does not reach. */
const WORDS: readonly (readonly [number, number, number, DubinsWord, number | undefined])[] = [
  [DOWN, DOWN, 0.2, 'RSL', 12.6234864210475],
  [DOWN, DOWN, 0.2, 'RLR', 12.3662871871361],
  [DOWN, DOWN, 0.2, 'LSR', undefined],
  [DOWN, 0, 0.2, 'LSL', 9.13460648146105],
  [DOWN, 0, 0.6, 'RLR', 9.03070756624769],
  [DOWN, UP, 10, 'RSL', 16.483860119893],
  [0, 0, 1.2, 'RLR', 11.3475999982976],
];

describe('the shortest path of unit turning radius', () => {
  test.each(SHORTEST)('from heading %f to %f, %f apart, is %s and as long as published', (a, b, d, word, length) => {
    const found = shortestDubinsPath(pose(0, 0, a), pose(d, 0, b), 1);
    expect(found.length).toBeCloseTo(length, 9);
    // Two words share the first row's length; the published one is among the shortest.
    const parts = dubinsParts(word, d, [a, b]);
    expect((parts?.[0] ?? 0) + (parts?.[1] ?? 0) + (parts?.[2] ?? 0)).toBeCloseTo(length, 9);
    const end = pathEnd(found.path);
    expect(Math.hypot(end.x - d, end.y)).toBeLessThan(1e-9);
  });

  test('straight ahead it is the straight', () => {
    const { path, length } = shortestDubinsPath(pose(0, 0, 0), pose(7, 0, 0), 1);
    expect(length).toBeCloseTo(7, 12);
    expect(path).toHaveLength(1);
  });

  test.each(WORDS)('from heading %f to %f, %f apart, the word %s is as long as published', (a, b, d, word, length) => {
    const parts = dubinsParts(word, d, [a, b]);
    if (length === undefined) expect(parts).toBeUndefined();
    else expect((parts?.[0] ?? 0) + (parts?.[1] ?? 0) + (parts?.[2] ?? 0)).toBeCloseTo(length, 9);
  });
});

/**
 * Y. Kaya, "Markov–Dubins interpolating curves", Computational Optimization and Applications, 2019 (title and year from
 * memory), examples 1 to 4; lengths as a public test suite has them. Curvature bound, points, end headings, length.
 */
const THROUGH: readonly (readonly [number, number, readonly (readonly [number, number])[], number, number, number])[] =
  [
    [
      1,
      3,
      [
        [0, 0],
        [-0.1, 0.3],
        [0.2, 0.8],
        [1, 1],
      ],
      -Math.PI / 3,
      -Math.PI / 6,
      3.415578858075,
    ],
    [
      2,
      3,
      [
        [0, 0],
        [-0.1, 0.3],
        [0.2, 0.8],
        [1, 1],
        [0.5, 0.5],
        [0.5, 0],
      ],
      -Math.PI / 3,
      -Math.PI / 6,
      6.2780346,
    ],
    [
      3,
      5,
      [
        [0.5, 1.2],
        [0, 0.8],
        [0, 0.4],
        [0.1, 0],
        [0.4, 0.2],
        [0.5, 0.5],
        [0.6, 1],
        [1, 0.8],
        [1, 0],
        [1.4, 0.2],
        [1.2, 1],
        [1.5, 1.2],
        [2, 1.5],
        [1.5, 0.8],
        [1.5, 0],
        [1.7, 0.6],
        [1.9, 1],
        [2, 0.5],
        [1.9, 0],
        [2.5, 0.6],
      ],
      (5 * Math.PI) / 6,
      0,
      11.916212654286,
    ],
    [
      4,
      3,
      [
        [0.5, 1.2],
        [0, 0.5],
        [0.5, 0.5],
        [1, 0.5],
        [1.5, 0.5],
        [2, 0.5],
        [2, 0],
        [1.5, 0],
        [1, 0],
        [0.5, 0],
        [0, 0],
        [0, -0.5],
      ],
      (5 * Math.PI) / 6,
      0,
      7.467562181965,
    ],
  ];

describe('the shortest path through points', () => {
  test.each(THROUGH)(
    'example %i of Kaya has the published length to 1e-6',
    (_, curvature, points, start, end, length) => {
      const at = points.map(([x, y]) => ({ x, y }));
      const [first, last] = [at[0] ?? { x: 0, y: 0 }, at.at(-1) ?? { x: 0, y: 0 }];
      const found = dubinsThroughWaypoints(
        { ...first, angle: start },
        at.slice(1, -1),
        { ...last, angle: end },
        1 / curvature,
      );
      expect(Math.abs(found.length - length)).toBeLessThan(1e-6);
    },
  );
});
