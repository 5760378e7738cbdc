import type { Metres } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Point } from './point.ts';
import { oppositePose, type Pose } from './pose.ts';
import { type Bounds, unionBounds } from './ring.ts';

/** A piece of a path with constant curvature: 0 is straight, positive turns left. Curvature in 1/m. */
export interface Stretch {
  readonly start: Pose;
  readonly length: Metres;
  readonly curvature: number;
}

/** A smooth path: each stretch starts at the pose where the one before ended. */
export type Path = readonly Stretch[];

/** sin(u)/u, the ratio of a chord to its arc. */
function sinc(u: number): number {
  return Math.abs(u) < 1e-8 ? 1 : Math.sin(u) / u;
}

/**
 * The pose after `along` metres on a stretch; one formula for straights and arcs, numerically stable at any curvature.
 */
export function poseOn(stretch: Stretch, along: Metres): Pose {
  const { start, curvature } = stretch;
  const half = (curvature * along) / 2;
  const chord = along * sinc(half);
  return {
    x: start.x + chord * Math.cos(start.angle + half),
    y: start.y + chord * Math.sin(start.angle + half),
    angle: start.angle + 2 * half,
  };
}

export function pathLength(path: Path): Metres {
  return path.reduce((sum, stretch) => sum + stretch.length, 0);
}

/** The pose `along` metres from the path's start; before the start and past the end, the first and last pose. */
export function poseAt(path: Path, along: Metres): Pose {
  let rest = along;
  for (const [i, stretch] of path.entries()) {
    if (rest <= stretch.length || i === path.length - 1) {
      return poseOn(stretch, Math.min(Math.max(rest, 0), stretch.length));
    }
    rest -= stretch.length;
  }
  throw new Error('poseAt: a path has at least one stretch, got none');
}

export function pathEnd(path: Path): Pose {
  const last = path.at(-1);
  if (last === undefined) throw new Error('pathEnd: a path has at least one stretch, got none');
  return poseOn(last, last.length);
}

/** Points along the path, at most `step` metres apart; every start and end of a stretch is among them. */
export function pathPoints(path: Path, step: Metres): Point[] {
  const points: Point[] = [];
  for (const stretch of path) {
    const pieces = Math.max(1, Math.ceil(stretch.length / step));
    for (let i = 0; i < pieces; i += 1) {
      const { x, y } = poseOn(stretch, (stretch.length * i) / pieces);
      points.push({ x, y });
    }
  }
  if (path.length > 0) {
    const { x, y } = pathEnd(path);
    points.push({ x, y });
  }
  return points;
}

/** Stretches of the given lengths and curvatures, one after the other from a pose; those without length are left out. */
export function pathFrom(from: Pose, parts: readonly { readonly length: Metres; readonly curvature: number }[]): Path {
  const path: Stretch[] = [];
  let start = from;
  for (const { length, curvature } of parts) {
    if (length <= 0) continue;
    const stretch = { start, length, curvature };
    path.push(stretch);
    start = poseOn(stretch, length);
  }
  return path.length > 0 ? path : [{ start: from, length: 0, curvature: 0 }];
}

/** A cut so near to the end of a stretch is at its end, metres: the lengths before it may not add up to the last bit. */
const CUT_ROUNDING: Metres = 1e-9;

/**
 * The path in two, cut `along` metres from its start; the parts have the path's stretches where those are whole. A cut at
 * an end leaves one part with a stretch of length 0. Cached by path, so that the same cut gives the same two paths.
 */
export const cutPath = memoizeByIdentity((path: Path, along: Metres): readonly [Path, Path] => {
  const before: Stretch[] = [];
  const after: Stretch[] = [];
  let rest = along;
  for (const stretch of path) {
    const { length, curvature } = stretch;
    if (rest >= length - CUT_ROUNDING) before.push(stretch);
    else if (rest <= CUT_ROUNDING) after.push(stretch);
    else {
      before.push({ ...stretch, length: rest });
      after.push({ start: poseOn(stretch, rest), length: length - rest, curvature });
    }
    rest -= length;
  }
  return [
    before.length > 0 ? before : pathFrom(poseAt(path, 0), []),
    after.length > 0 ? after : pathFrom(pathEnd(path), []),
  ];
});

/** How much the path turns altogether, left and right added up, radians. */
export function totalTurn(path: Path): number {
  return path.reduce((sum, stretch) => sum + Math.abs(stretch.curvature) * stretch.length, 0);
}

/** The smallest box around a stretch, exact on arcs. */
export function stretchBounds(stretch: Stretch): Bounds {
  const { start, length, curvature } = stretch;
  const end = poseOn(stretch, length);
  let [minX, maxX] = start.x < end.x ? [start.x, end.x] : [end.x, start.x];
  let [minY, maxY] = start.y < end.y ? [start.y, end.y] : [end.y, start.y];
  if (curvature === 0) return { minX, minY, maxX, maxY };
  // The arc is furthest out where it runs along an axis: at headings that are whole quarter turns.
  const a = start.angle;
  const b = a + curvature * length;
  const quarter = Math.PI / 2;
  for (let k = Math.ceil(Math.min(a, b) / quarter); k * quarter <= Math.max(a, b); k += 1) {
    const { x, y } = poseOn(stretch, (k * quarter - a) / curvature);
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** The smallest box around the path, exact on arcs. */
export function pathBounds(path: Path): Bounds {
  const [first, ...others] = path;
  if (first === undefined) throw new Error('pathBounds: a path has at least one stretch, got none');
  return others.reduce((all, stretch) => unionBounds(all, stretchBounds(stretch)), stretchBounds(first));
}

/** The same way ridden from its end to its start. */
export function reversedPath(path: Path): Path {
  return path.toReversed().map((stretch): Stretch => {
    const end = poseOn(stretch, stretch.length);
    return { start: oppositePose(end), length: stretch.length, curvature: -stretch.curvature };
  });
}
