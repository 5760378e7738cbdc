import { beside } from '../../constraints/beside.ts';
import type { GrippedPose, ObservationKind } from '../../constraints/constraint.ts';
import { gapDimension } from '../../constraints/gap.ts';
import { type AxisPoint, axisMiddle, axisPoint, pointAlong } from '../../constraints/grip.ts';
import { clearOfMarker } from '../../constraints/marker-clear.ts';
import { wallDimension } from '../../constraints/off-wall.ts';
import type { PlacedPiece } from '../../course/placed.ts';
import { distance, type Point } from '../../plane/point.ts';
import { type Ground, gripped, observedOn, wallLength } from '../ground.ts';
import { isSmall } from '../observables.ts';
import { wallPoint } from '../observe.ts';
import type { Observable } from '../setout.ts';

/** Where an observation is made, on the ground, as the pieces are drawn. */
export interface TapeLine {
  /** From where to where the tape lies; absent: there is nothing to read. */
  readonly tape?: readonly [Point, Point];
  /** What the eye or a board follows: a line of sight, or from the tape square across to what it is about. */
  readonly guide?: readonly Point[];
}

/** What a tape line is worked out from: the grips, their thickness where they are small things, and the value. */
interface Taped {
  readonly of: Observable;
  readonly pair: readonly [GrippedPose, GrippedPose];
  /** Half of what a small thing covers; 0 for a long one. */
  readonly covered: readonly [number, number];
  readonly value: number;
  readonly wall: number;
}

/** Less than this is nothing to read, metres or radians. */
const NOTHING = 1e-4;
/** Legs of the sign of a right angle, metres. */
const CORNER = 0.35;

/** The straight between two points, less what small things cover of it. */
function between(a: Point, b: Point, [from, to]: readonly [number, number]): readonly [Point, Point] {
  const far = distance(a, b);
  if (far === 0) return [a, b];
  const way = { ux: (b.x - a.x) / far, uy: (b.y - a.y) / far };
  return [pointAlong(a, way, from), pointAlong(b, way, -to)];
}

function pose({ x, y }: AxisPoint): Point {
  return { x, y };
}

/** The mean direction of two pieces; the second counts turned where they lie end for end. */
function meanDirection(a: AxisPoint, b: AxisPoint): { readonly ux: number; readonly uy: number } {
  const sign = a.ux * b.ux + a.uy * b.uy < 0 ? -1 : 1;
  const [x, y] = [a.ux + sign * b.ux, a.uy + sign * b.uy];
  const long = Math.hypot(x, y);
  return long === 0 ? { ux: a.ux, uy: a.uy } : { ux: x / long, uy: y / long };
}

function level({ pair: [first, second], value }: Taped): TapeLine {
  const [a, b] = [axisPoint(first), axisPoint(second)];
  if (Math.abs(value) < NOTHING) return { guide: [pose(a), pose(b)] };
  const foot = pointAlong(b, meanDirection(a, b), -value);
  return { tape: [foot, pose(b)], guide: [pose(a), foot] };
}

/** From the nearer end of a long piece on along its line. */
function inLine({ pair: [line, thing], value }: Taped): TapeLine {
  const at = axisPoint(thing);
  const [start, end] = [0, 1].map((each) => axisPoint({ ...line, at: each })) as [AxisPoint, AxisPoint];
  const near = distance(start, at) < distance(end, at) ? start : end;
  const foot = pointAlong(at, { ux: -start.uy, uy: start.ux }, -value);
  const guide = [pose(near), foot];
  return Math.abs(value) < NOTHING ? { guide } : { tape: [foot, pose(at)], guide };
}

/** A small square in the corner in which two pieces meet, turned to where both lie. */
function square({ pair: [first, second] }: Taped): TapeLine {
  const [a, b] = [axisMiddle(first), axisMiddle(second)];
  const cross = a.ux * b.uy - a.uy * b.ux;
  if (Math.abs(cross) < 0.5) return {};
  const t = ((b.x - a.x) * b.uy - (b.y - a.y) * b.ux) / cross;
  const corner = pointAlong(a, a, t);
  const towards = (at: AxisPoint, size: number): { ux: number; uy: number } => {
    const along = (at.x - corner.x) * at.ux + (at.y - corner.y) * at.uy;
    return Math.abs(along) < size / 4 ? at : { ux: Math.sign(along) * at.ux, uy: Math.sign(along) * at.uy };
  };
  const [u, v] = [towards(a, first.length), towards(b, second.length)];
  const one = pointAlong(corner, u, CORNER);
  return { guide: [one, pointAlong(one, v, CORNER), pointAlong(corner, v, CORNER)] };
}

function ahead({ pair: [long, thing], value }: Taped): TapeLine {
  const [start, at] = [axisPoint(long), axisPoint(thing)];
  if (Math.abs(value) < NOTHING) return { guide: [pose(start), pose(at)] };
  const foot = pointAlong(start, start, value);
  return { tape: [pose(start), foot], guide: [foot, pose(at)] };
}

const LINES: Readonly<Record<ObservationKind, (taped: Taped) => TapeLine>> = {
  gap: ({ pair }) => ({ tape: gapDimension(pair) }),
  between: ({ pair: [first, second], covered }) => ({ tape: between(axisPoint(first), axisPoint(second), covered) }),
  beside: ({ pair, of }) => ({ tape: beside.dimension?.(pair, of.side) ?? [axisPoint(pair[1]), axisPoint(pair[0])] }),
  clear: ({ pair }) => ({ tape: clearOfMarker.dimension?.(pair, 1) ?? [axisPoint(pair[0]), axisPoint(pair[1])] }),
  ahead,
  level,
  'in-line': inLine,
  square,
  against: () => ({}),
  'off-wall': ({ pair }) => ({ tape: wallDimension(pair) }),
  'along-wall'({ pair: [thing, wall], of: { from = 0, runs = 1 }, value, wall: length }) {
    const [start, mark] = [from, from + runs * value].map((at) => pose(wallPoint(wall, length, at)));
    if (start === undefined || mark === undefined) return {};
    return { tape: [start, mark], guide: [mark, pose(axisPoint(thing))] };
  },
  'from-rail': ({ pair: [thing, wall], of: { from = 0 }, covered, wall: length }) => ({
    tape: between(pose(wallPoint(wall, length, from)), axisPoint(thing), [0, covered[0]]),
  }),
};

/** Where the tape of an observation lies and what the eye follows, as the pieces are drawn. Metres on the ground. */
export function tapeLine(ground: Ground, of: Observable): TapeLine {
  const [first, second] = of.grips;
  const half = (grip: Observable['grips'][number]): number => {
    const piece = 'piece' in grip ? (ground.pieces.get(grip.piece) as PlacedPiece) : undefined;
    return piece !== undefined && isSmall(piece) ? piece.figure.width / 2 : 0;
  };
  return LINES[of.kind]({
    of,
    pair: [gripped(ground, first), gripped(ground, second)],
    covered: [half(first), half(second)],
    value: observedOn(ground, of).value,
    wall: 'wall' in second ? wallLength(ground, second.wall) : 0,
  });
}
