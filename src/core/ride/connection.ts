/**
 * How two poses of one passage are joined. The horse is between an obstacle's pieces here, so the calmest way wins: one
 * arc where one fits, else a biarc, else the shortest path at the gait's least radius (Dubins).
 */
import type { Metres, Radians } from '../measure/quantity.ts';
import { shortestDubinsPath } from '../plane/dubins.ts';
import { type Path, pathFrom, pathLength, type Stretch } from '../plane/path.ts';
import { distance, type Point, TOUCH } from '../plane/point.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';

/** Curvatures this near, 1/m, are one arc; a straight is an arc of less than this. */
const CURVATURE_TOLERANCE = 1e-9;
/** A connection longer than this many times the straight is a loop; a half circle is π/2 of it. */
const LOOP_RATIO = 1.65;

/** The arc that leaves a pose along its heading and reaches a point; absent when the point is there already or straight behind. */
function arcTo(from: Pose, to: Point): { readonly length: Metres; readonly curvature: number } | undefined {
  const chord = distance(from, to);
  if (chord < TOUCH) return undefined;
  const aside: Radians = normalizeAngle(Math.atan2(to.y - from.y, to.x - from.x) - from.angle);
  if (Math.abs(aside) > Math.PI - 1e-6) return undefined;
  if (Math.abs(aside) < 1e-12) return { length: chord, curvature: 0 };
  return { length: (chord * aside) / Math.sin(aside), curvature: (2 * Math.sin(aside)) / chord };
}

/**
 * A biarc: two arcs, tangent at both poses and to each other, with tangents of equal length; one arc where that is
 * enough.
 */
export function biarc(from: Pose, to: Pose): Path | undefined {
  const vx = to.x - from.x;
  const vy = to.y - from.y;
  const ux = Math.cos(from.angle);
  const uy = Math.sin(from.angle);
  const wx = Math.cos(to.angle);
  const wy = Math.sin(to.angle);
  const ahead = vx * (ux + wx) + vy * (uy + wy);
  const square = vx * vx + vy * vy;
  const below = ahead + Math.sqrt(ahead * ahead + 2 * (1 - (ux * wx + uy * wy)) * square);
  if (square < TOUCH * TOUCH || below < 1e-9) return undefined;
  const tangent = square / below;
  const middle = {
    x: (from.x + to.x + tangent * (ux - wx)) / 2,
    y: (from.y + to.y + tangent * (uy - wy)) / 2,
  };
  const first = arcTo(from, middle);
  // The second arc mirrors the first, seen backwards from the far pose.
  const second = arcTo({ x: to.x, y: to.y, angle: to.angle + Math.PI }, middle);
  if (first === undefined || second === undefined) return undefined;
  const back = { length: second.length, curvature: -second.curvature };
  if (Math.abs(first.curvature - back.curvature) < CURVATURE_TOLERANCE) {
    const curvature = (first.curvature + back.curvature) / 2;
    return pathFrom(from, [
      { length: first.length + back.length, curvature: Math.abs(curvature) < CURVATURE_TOLERANCE ? 0 : curvature },
    ]);
  }
  return pathFrom(from, [first, back]);
}

/** The smallest radius on the path, metres; infinite on straights. */
export function tightestRadius(path: Path): Metres {
  const most = Math.max(...path.map((stretch) => Math.abs(stretch.curvature)));
  return most < CURVATURE_TOLERANCE ? Number.POSITIVE_INFINITY : 1 / most;
}

/** Whether the path bends one way all along, its radii within a fifth of each other. */
function isEven(path: Path): boolean {
  const [first, last] = [path[0]?.curvature ?? 0, path.at(-1)?.curvature ?? 0];
  return path.length === 1 || Math.min(first / last, last / first) >= 0.8;
}

/**
 * A connection of two poses of a passage, and whether a horse in this gait can ride it without a loop or a turn that is
 * too tight.
 */
export interface Connection {
  readonly path: Path;
  readonly calm: boolean;
  /** The smallest radius, metres; 0 for a loop. */
  readonly radius: Metres;
}

export function connection(from: Pose, to: Pose, least: Metres): Connection {
  const straight = distance(from, to);
  if (straight < TOUCH && Math.abs(normalizeAngle(to.angle - from.angle)) < 1e-6) {
    return { path: pathFrom(from, []), calm: true, radius: Number.POSITIVE_INFINITY };
  }
  const smooth = biarc(from, to);
  if (smooth !== undefined) {
    const radius = tightestRadius(smooth);
    const direct = pathLength(smooth) <= LOOP_RATIO * straight;
    // One arc, or nearly one, is what the obstacle was built for in any gait; the checks judge its radius.
    if (direct && (isEven(smooth) || radius >= least - TOUCH)) return { path: smooth, calm: true, radius };
    if (direct) return { path: smooth, calm: false, radius };
  }
  const { path } = shortestDubinsPath(from, to, least);
  const calm = pathLength(path) <= LOOP_RATIO * straight;
  return { path, calm, radius: calm ? least : 0 };
}

/** Consecutive stretches of the same curvature, merged. */
export function mergedPath(path: Path): Path {
  const joined: Stretch[] = [];
  for (const stretch of path) {
    const last = joined.at(-1);
    if (last !== undefined && stretch.length === 0) continue;
    if (last !== undefined && last.length === 0) joined.pop();
    if (last !== undefined && last.length > 0 && Math.abs(last.curvature - stretch.curvature) < CURVATURE_TOLERANCE) {
      joined[joined.length - 1] = { ...last, length: last.length + stretch.length };
    } else joined.push(stretch);
  }
  return joined;
}
