/**
 * The ridden parts of a passage: from station to station over the poles between. The line crosses each pole square
 * where it can; where poles lie a little askew it gives up a few degrees of square rather than circle.
 */
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { type Path, pathLength } from '../plane/path.ts';
import { distance, type Point, TOUCH } from '../plane/point.ts';
import { normalizeAngle, type Pose } from '../plane/pose.ts';
import { type Connection, connection, mergedPath } from './connection.ts';

/** A waypoint: over a pole, or a pose that is fixed. */
export interface Waypoint {
  readonly pose: Pose;
  readonly over?: { readonly pole: PlacedPiece; readonly fraction: number };
}

interface PlacedWaypoint extends Waypoint {
  /** Metres from the first waypoint. */
  readonly at: Metres;
  readonly skew: Radians;
}

export interface WaypointLine {
  readonly path: Path;
  readonly waypoints: readonly PlacedWaypoint[];
}

/** The line may be off square by at most this much. 20°: estimate. */
const MOST_SKEW: Radians = (20 * Math.PI) / 180;
/** The heading at `b` of the circle through three points; along the chords' mean where they lie in line. */
function circleHeading(a: Point, b: Point, c: Point): Radians {
  const into = Math.atan2(b.y - a.y, b.x - a.x);
  const onwards = Math.atan2(c.y - b.y, c.x - b.x);
  const whole = Math.atan2(c.y - a.y, c.x - a.x);
  // The tangent at b meets chord ab at the angle that chord ac meets chord cb: inscribed angles.
  return into + normalizeAngle(onwards - whole);
}

/** The smoothest heading through its neighbours, for each waypoint that is over a pole. */
function evenHeadings(waypoints: readonly Waypoint[]): Radians[] {
  const inner = waypoints.map((waypoint, i) => {
    const before = waypoints[i - 1];
    const after = waypoints[i + 1];
    if (waypoint.over === undefined || before === undefined || after === undefined) return waypoint.pose.angle;
    return circleHeading(before.pose, waypoint.pose, after.pose);
  });
  return waypoints.map((waypoint, i) => {
    if (waypoint.over === undefined) return waypoint.pose.angle;
    const neighbour = i === 0 ? 1 : i === waypoints.length - 1 ? i - 1 : undefined;
    const other = neighbour === undefined ? undefined : waypoints[neighbour];
    if (neighbour === undefined || other === undefined) return inner[i] ?? waypoint.pose.angle;
    const [a, b] = i === 0 ? [waypoint.pose, other.pose] : [other.pose, waypoint.pose];
    if (distance(a, b) < TOUCH) return waypoint.pose.angle;
    const chord = Math.atan2(b.y - a.y, b.x - a.x);
    // At an end the curve goes on as it came: the neighbour's heading, mirrored about the chord.
    return waypoints.length === 2 && other.over !== undefined ? chord : 2 * chord - (inner[neighbour] ?? chord);
  });
}

/** The even headings, as far as a pole lets the line be off square. */
function evenPoses(waypoints: readonly Waypoint[]): readonly Pose[] {
  const even = evenHeadings(waypoints);
  return waypoints.map(({ pose, over }, i) => {
    if (over === undefined) return pose;
    const deviation = normalizeAngle((even[i] ?? pose.angle) - pose.angle);
    return { ...pose, angle: pose.angle + Math.min(MOST_SKEW, Math.max(-MOST_SKEW, deviation)) };
  });
}

function connections(poses: readonly Pose[], least: Metres): Connection[] {
  return poses.slice(1).map((to, i) => connection(poses[i] ?? to, to, least));
}

/** What a line goes over, and its least radius. */
interface LineQuery {
  readonly waypoints: readonly Waypoint[];
  readonly least: Metres;
}

interface HeadingTrial {
  readonly poses: readonly Pose[];
  readonly connections: readonly Connection[];
  readonly cost: number;
}

/**
 * The cost of a line over the waypoints: first, how much it turns tighter than the gait can; then, how far it is from
 * square (radians, squared); then, how its curvature jumps from pole to pole, in units of the gait's tightest turn.
 */
function headingCost(poses: readonly Pose[], all: readonly Connection[], { waypoints, least }: LineQuery): number {
  const tight = all.reduce(
    (sum, { radius }) => sum + Math.max(0, Math.min(MOST_TIGHTNESS, least / radius) - 1) ** 2,
    0,
  );
  const skew = poses.reduce(
    (sum, { angle }, i) => sum + normalizeAngle(angle - (waypoints[i]?.pose.angle ?? angle)) ** 2,
    0,
  );
  const curves = all.flatMap(({ path }) => path.map(({ curvature }) => curvature * least));
  const jumps = curves.slice(1).reduce((sum, curve, i) => sum + (curve - (curves[i] ?? curve)) ** 2, 0);
  return COST_WEIGHT.tight * tight + skew + COST_WEIGHT.jumps * jumps;
}

/** The weights of these beside the skew. Estimates. */
const COST_WEIGHT = { tight: 100, jumps: 0.07 };
/** Beyond this many times too tight, lines are no longer told apart. */
const MOST_TIGHTNESS = 10;
/** Steps of the coordinate search over headings, round by round, radians. */
const HEADING_STEPS: readonly Radians[] = [8, 4, 2, 1, 0.5].map((degrees) => (degrees * Math.PI) / 180);

function headingTrial(poses: readonly Pose[], of: LineQuery): HeadingTrial {
  const all = connections(poses, of.least);
  return { poses, connections: all, cost: headingCost(poses, all, of) };
}

/** The line with one heading changed: only the two connections beside it change. */
function withHeading(
  from: HeadingTrial,
  { which, pose }: { readonly which: number; readonly pose: Pose },
  of: LineQuery,
): HeadingTrial {
  const poses = from.poses.with(which, pose);
  const all = from.connections.map((known, k) => {
    const [a, b] = [poses[k], poses[k + 1]];
    return a === undefined || b === undefined || (k !== which && k !== which - 1) ? known : connection(a, b, of.least);
  });
  return { poses, connections: all, cost: headingCost(poses, all, of) };
}

/** The same line with each heading moved to its best, one after the other (coordinate descent). */
function optimisedHeadings(begun: HeadingTrial, of: LineQuery): HeadingTrial {
  let best = begun;
  for (const step of HEADING_STEPS) {
    for (const [which, { over, pose: square }] of of.waypoints.entries()) {
      if (over === undefined) continue;
      for (const by of [-step, step]) {
        const skew = normalizeAngle((best.poses[which]?.angle ?? square.angle) + by - square.angle);
        if (Math.abs(skew) > MOST_SKEW) continue;
        const tried = withHeading(best, { which, pose: { ...square, angle: square.angle + skew } }, of);
        if (tried.cost < best.cost) best = tried;
      }
    }
  }
  return best;
}

/**
 * The line over the waypoints in order: square over every pole where the gait can turn so. Else the headings give up as
 * little of square as lets the line turn no tighter than `least` metres, at most 20°, and smoothly.
 */
export function waypointLine(waypoints: readonly Waypoint[], least: Metres): WaypointLine {
  const square = waypoints.map(({ pose }) => pose);
  const query = { waypoints, least };
  let best = headingTrial(square, query);
  if (!best.connections.every(({ calm }) => calm)) {
    const even = headingTrial(evenPoses(waypoints), query);
    best = optimisedHeadings(even.cost < best.cost ? even : best, query);
  }
  let at = 0;
  const placedWaypoints = waypoints.map((waypoint, i): PlacedWaypoint => {
    if (i > 0) at += pathLength(best.connections[i - 1]?.path ?? []);
    const pose = best.poses[i] ?? waypoint.pose;
    return { ...waypoint, pose, at, skew: normalizeAngle(pose.angle - waypoint.pose.angle) };
  });
  return { path: mergedPath(best.connections.flatMap(({ path }) => path)), waypoints: placedWaypoints };
}
