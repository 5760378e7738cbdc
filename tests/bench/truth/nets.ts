/** Poles that are held to each other by gaps alone, and gaps measured on the ground apart from the program's equations. */

import { seededRandom } from '../../../src/core/change/seeded-random.ts';
import type { Constraint } from '../../../src/core/constraints/constraint.ts';
import type { Arena, Layout } from '../../../src/core/course/course.ts';
import { placedObstacle } from '../../../src/core/course/placed.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import type { Point } from '../../../src/core/plane/point.ts';
import { type Pose, pose } from '../../../src/core/plane/pose.ts';
import { pole } from '../../core/ride/hand-laid.ts';

/** So wide that no wall is in the way of a drag of 20 ft. */
export const FIELD: Arena = {
  title: 'Field',
  length: 120,
  width: 120,
  entrance: { wall: 'west', at: 60, width: 4 },
};

const LENGTH = 3.6576;

export function layoutOf(obstacles: readonly Obstacle[], constraints: readonly Constraint[]): Layout {
  return { id: 'a', title: 'A', obstacles, constraints, ride: { start: { x: 2, y: 60, angle: 0 }, legs: [] } };
}

/** A pole by itself, as an obstacle: its piece is `ID/only`. */
export function single(id: string, at: Pose, length = LENGTH): Obstacle {
  return {
    id,
    kind: 'free',
    values: {},
    pose: at,
    side: 1,
    pieces: [pole('only', pose(0, 0, 0), length)],
    constraints: [],
    passages: [],
  };
}

interface Rectangle {
  readonly pose: Pose;
  readonly length: number;
  readonly width: number;
}

function rectangles(layout: Layout): ReadonlyMap<string, Rectangle> {
  return new Map(
    layout.obstacles.flatMap((obstacle) =>
      placedObstacle(obstacle).pieces.map(({ key, pose: at, figure }) => [
        key,
        { pose: at, length: figure.length, width: figure.width },
      ]),
    ),
  );
}

function alongAxis({ pose: { x, y, angle }, length }: Rectangle, at: number): Point {
  const far = (at - 0.5) * length;
  return { x: x + far * Math.cos(angle), y: y + far * Math.sin(angle) };
}

/** The part of the way from `a` to `b` that lies beside the rectangle's long sides, as fractions of the way. */
function insideBand({ pose: { x, y, angle }, width }: Rectangle, a: Point, b: Point): readonly [number, number] {
  const across = (p: Point) => -Math.sin(angle) * (p.x - x) + Math.cos(angle) * (p.y - y);
  const [from, to] = [across(a), across(b)];
  const ends = [(-width / 2 - from) / (to - from), (width / 2 - from) / (to - from)];
  return [Math.min(...ends), Math.max(...ends)];
}

/** The gap as a crew tapes it: along the straight from point to point, what lies between the two poles' faces. */
export function tapedOnGround(layout: Layout, { grips }: Constraint): number {
  const all = rectangles(layout);
  const [first, second] = grips.map((grip) => {
    if (!('piece' in grip)) throw new Error('a gap has no wall');
    const rectangle = all.get(grip.piece);
    if (rectangle === undefined) throw new Error(`no ${grip.piece}`);
    return { rectangle, at: alongAxis(rectangle, grip.at ?? 0.5) };
  });
  if (first === undefined || second === undefined) throw new Error('a gap has two grips');
  const whole = Math.hypot(second.at.x - first.at.x, second.at.y - first.at.y);
  const leaves = insideBand(first.rectangle, first.at, second.at)[1];
  const meets = insideBand(second.rectangle, first.at, second.at)[0];
  return whole * (meets - leaves);
}

/** Cosines of the tape to the normals of both poles, as it lies. */
export function tapeCosines(layout: Layout, { grips }: Constraint): readonly number[] {
  const all = rectangles(layout);
  const held = grips.flatMap((grip) => {
    const rectangle = 'piece' in grip ? all.get(grip.piece) : undefined;
    return rectangle === undefined || !('piece' in grip)
      ? []
      : [{ rectangle, at: alongAxis(rectangle, grip.at ?? 0.5) }];
  });
  const [a, b] = held;
  if (a === undefined || b === undefined) return [];
  const way = Math.atan2(b.at.y - a.at.y, b.at.x - a.at.x);
  return held.map(({ rectangle }) => Math.abs(Math.sin(way - rectangle.pose.angle)));
}

/** Three to six poles and gaps between them: a chain, a star or a ring, each as it lies. One number makes one net. */
export function looseNet(seed: number): Layout {
  const roll = seededRandom(seed);
  const between = (least: number, most: number) => least + (most - least) * roll();
  for (;;) {
    const count = 3 + Math.floor(roll() * 4);
    const form = roll();
    const heading = between(-Math.PI, Math.PI);
    const poles = Array.from({ length: count }, (_, i) => {
      const step = i * between(1.6, 2.4);
      const slide = between(-0.9, 0.9);
      const [c, s] = [Math.cos(heading), Math.sin(heading)];
      const at = { x: 60 - s * step + c * slide, y: 60 + c * step + s * slide };
      return single(`p${i}`, { ...at, angle: heading + between(-0.3, 0.3) + (roll() < 0.3 ? Math.PI : 0) });
    });
    const pairs = poles.slice(1).map((_, i) => [form < 0.7 ? i : 0, i + 1] as const);
    if (form > 0.85 && count > 3) pairs.push([1, count - 1]);
    const bare = layoutOf(poles, []);
    const constraints = pairs.map(([a, b], i): Constraint => {
      const at = [1 / 3, 0.5, 2 / 3][Math.floor(roll() * 3)] ?? 0.5;
      const grips = [
        { piece: `p${a}/only`, at },
        { piece: `p${b}/only`, at: roll() < 0.5 ? at : 1 - at },
      ];
      const draft: Constraint = { id: `gap-${i}`, kind: 'gap', grips };
      return { ...draft, hold: tapedOnGround(bare, draft), side: sideOf(bare, draft) };
    });
    const made = layoutOf(poles, constraints);
    const isPlain = constraints.every(
      (each) => (each.hold ?? 0) > 0.3 && tapeCosines(made, each).every((cosine) => cosine > 0.45),
    );
    if (isPlain) return made;
  }
}

function sideOf(layout: Layout, { grips }: Constraint): 1 | -1 {
  const all = rectangles(layout);
  const [a, b] = grips.map((grip) => ('piece' in grip ? all.get(grip.piece) : undefined));
  const [first, second] = grips;
  if (a === undefined || b === undefined || first === undefined || second === undefined) return 1;
  if (!('piece' in first) || !('piece' in second)) return 1;
  const [p, q] = [alongAxis(a, first.at ?? 0.5), alongAxis(b, second.at ?? 0.5)];
  return -Math.sin(a.pose.angle) * (q.x - p.x) + Math.cos(a.pose.angle) * (q.y - p.y) > 0 ? 1 : -1;
}
