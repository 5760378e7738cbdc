/**
 * The ridden parts of a passage: from one station to the next over the poles between. The line goes square over each
 * pole where it can; over poles that are a little out of true it goes a few degrees off square sooner than circle.
 */
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { type Path, pathLength } from '../plane/path.ts';
import { distance, type Point, TOUCH } from '../plane/point.ts';
import { type Pose, wrapped } from '../plane/pose.ts';
import { type Joint, joint, merged } from './joint.ts';

/** A place the line goes through: over a pole, or at a pose that is held. */
export interface Knot {
  readonly pose: Pose;
  readonly over?: { readonly pole: PlacedPiece; readonly fraction: number };
}

export interface RiddenKnot extends Knot {
  /** Metres from the first knot. */
  readonly at: Metres;
  readonly skew: Radians;
}

export interface Ridden {
  readonly path: Path;
  readonly knots: readonly RiddenKnot[];
}

/** The line gives up being square to a pole by at most this much. 20°: estimate. */
const MOST_SKEW: Radians = (20 * Math.PI) / 180;
/** How far from square towards the calmest heading, in the order in which they are tried. */
const YIELDS = [0, 0.25, 0.5, 0.75, 1];

/** The heading at `b` of the circle through three points; along the chords' mean where they are in line. */
function circleHeading(a: Point, b: Point, c: Point): Radians {
  const into = Math.atan2(b.y - a.y, b.x - a.x);
  const onwards = Math.atan2(c.y - b.y, c.x - b.x);
  const whole = Math.atan2(c.y - a.y, c.x - a.x);
  // The tangent at b meets chord ab at the angle that chord ac meets chord cb: inscribed angles.
  return into + wrapped(onwards - whole);
}

/** The heading that runs most evenly through the neighbours, for each knot that is over a pole. */
function evenHeadings(knots: readonly Knot[]): Radians[] {
  const inner = knots.map((knot, i) => {
    const before = knots[i - 1];
    const after = knots[i + 1];
    if (knot.over === undefined || before === undefined || after === undefined) return knot.pose.angle;
    return circleHeading(before.pose, knot.pose, after.pose);
  });
  return knots.map((knot, i) => {
    if (knot.over === undefined) return knot.pose.angle;
    const neighbour = i === 0 ? 1 : i === knots.length - 1 ? i - 1 : undefined;
    const other = neighbour === undefined ? undefined : knots[neighbour];
    if (neighbour === undefined || other === undefined) return inner[i] ?? knot.pose.angle;
    const [a, b] = i === 0 ? [knot.pose, other.pose] : [other.pose, knot.pose];
    if (distance(a, b) < TOUCH) return knot.pose.angle;
    const chord = Math.atan2(b.y - a.y, b.x - a.x);
    // At an end the curve goes on as it came: the neighbour's heading mirrored about the chord.
    return knots.length === 2 && other.over !== undefined ? chord : 2 * chord - (inner[neighbour] ?? chord);
  });
}

function yielding(knots: readonly Knot[], share: number): readonly Pose[] {
  if (share === 0) return knots.map(({ pose }) => pose);
  const even = evenHeadings(knots);
  return knots.map(({ pose, over }, i) => {
    if (over === undefined) return pose;
    const wish = wrapped((even[i] ?? pose.angle) - pose.angle) * share;
    return { ...pose, angle: pose.angle + Math.min(MOST_SKEW, Math.max(-MOST_SKEW, wish)) };
  });
}

function joints(poses: readonly Pose[], least: Metres): Joint[] {
  return poses.slice(1).map((to, i) => joint(poses[i] ?? to, to, least));
}

/** The line over the knots in order, turning no tighter than `least` metres where that can be had. */
export function ridden(knots: readonly Knot[], least: Metres): Ridden {
  let best: { readonly poses: readonly Pose[]; readonly joints: readonly Joint[]; readonly radius: Metres } | undefined;
  for (const share of YIELDS) {
    const poses = yielding(knots, share);
    const tried = joints(poses, least);
    const radius = Math.min(...tried.map((each) => each.radius));
    const calm = tried.every((each) => each.calm);
    if (calm || best === undefined || radius > best.radius + TOUCH) best = { poses, joints: tried, radius };
    if (calm) break;
  }
  if (best === undefined) throw new Error('ridden: no way was tried');
  let at = 0;
  const placedKnots = knots.map((knot, i): RiddenKnot => {
    if (i > 0) at += pathLength(best.joints[i - 1]?.path ?? []);
    const pose = best.poses[i] ?? knot.pose;
    return { ...knot, pose, at, skew: wrapped(pose.angle - knot.pose.angle) };
  });
  return { path: merged(best.joints.flatMap(({ path }) => path)), knots: placedKnots };
}
