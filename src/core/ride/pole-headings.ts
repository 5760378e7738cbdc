/**
 * The ridden parts of a passage: from one station to the next over the poles between. The line goes square over each
 * pole where it can; over poles that are a little out of true it goes a few degrees off square sooner than circle.
 */
import type { PlacedPiece } from '../course/placed.ts';
import type { Metres, Radians } from '../measure/quantity.ts';
import { type Path, pathLength } from '../plane/path.ts';
import { distance, type Point, TOUCH } from '../plane/point.ts';
import { type Pose, wrapped } from '../plane/pose.ts';
import { type Joint, joint, merged } from './connection.ts';

/** A place the line goes through: over a pole, or at a pose that is held. */
export interface Knot {
  readonly pose: Pose;
  readonly over?: { readonly pole: PlacedPiece; readonly fraction: number };
}

interface RiddenKnot extends Knot {
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

/** The even headings, as far as a pole lets the line be off square. */
function evenPoses(knots: readonly Knot[]): readonly Pose[] {
  const even = evenHeadings(knots);
  return knots.map(({ pose, over }, i) => {
    if (over === undefined) return pose;
    const wish = wrapped((even[i] ?? pose.angle) - pose.angle);
    return { ...pose, angle: pose.angle + Math.min(MOST_SKEW, Math.max(-MOST_SKEW, wish)) };
  });
}

function joints(poses: readonly Pose[], least: Metres): Joint[] {
  return poses.slice(1).map((to, i) => joint(poses[i] ?? to, to, least));
}

/** What a line is to go over, and the tightest it may turn. */
interface Wanted {
  readonly knots: readonly Knot[];
  readonly least: Metres;
}

interface Tried {
  readonly poses: readonly Pose[];
  readonly joints: readonly Joint[];
  readonly cost: number;
}

/**
 * What is wrong with a line over the knots: first that it turns tighter than the gait can, then how far it is from square
 * (radians, squared), then how its curve jumps from pole to pole, in the gait's tightest turns.
 */
function costOf(poses: readonly Pose[], all: readonly Joint[], { knots, least }: Wanted): number {
  const tight = all.reduce((sum, { radius }) => sum + Math.max(0, Math.min(TIGHTEST, least / radius) - 1) ** 2, 0);
  const skew = poses.reduce((sum, { angle }, i) => sum + wrapped(angle - (knots[i]?.pose.angle ?? angle)) ** 2, 0);
  const curves = all.flatMap(({ path }) => path.map(({ curvature }) => curvature * least));
  const jumps = curves.slice(1).reduce((sum, curve, i) => sum + (curve - (curves[i] ?? curve)) ** 2, 0);
  return WEIGHT.tight * tight + skew + WEIGHT.jumps * jumps;
}

/** What these are worth beside the skew. Estimates. */
const WEIGHT = { tight: 100, jumps: 0.07 };
/** How many times too tight still tells one line from another. */
const TIGHTEST = 10;
/** By how much headings are tried to either side, round by round, radians. */
const STEPS: readonly Radians[] = [8, 4, 2, 1, 0.5].map((degrees) => (degrees * Math.PI) / 180);

function laidOver(poses: readonly Pose[], of: Wanted): Tried {
  const all = joints(poses, of.least);
  return { poses, joints: all, cost: costOf(poses, all, of) };
}

/** The line with one heading changed: only the joints to either side of it change too. */
function turned(from: Tried, { which, pose }: { readonly which: number; readonly pose: Pose }, of: Wanted): Tried {
  const poses = from.poses.with(which, pose);
  const all = from.joints.map((known, k) => {
    const [a, b] = [poses[k], poses[k + 1]];
    return a === undefined || b === undefined || (k !== which && k !== which - 1) ? known : joint(a, b, of.least);
  });
  return { poses, joints: all, cost: costOf(poses, all, of) };
}

/** The same line with each heading turned to where the whole is best. */
function eased(begun: Tried, of: Wanted): Tried {
  let best = begun;
  for (const step of STEPS) {
    for (const [which, { over, pose: square }] of of.knots.entries()) {
      if (over === undefined) continue;
      for (const by of [-step, step]) {
        const skew = wrapped((best.poses[which]?.angle ?? square.angle) + by - square.angle);
        if (Math.abs(skew) > MOST_SKEW) continue;
        const tried = turned(best, { which, pose: { ...square, angle: square.angle + skew } }, of);
        if (tried.cost < best.cost) best = tried;
      }
    }
  }
  return best;
}

/**
 * The line over the knots in order: square over every pole where the gait can turn so. Else each heading gives up as
 * little of square as lets the line turn no tighter than `least` metres, no more than 20°, and smoothly.
 */
export function ridden(knots: readonly Knot[], least: Metres): Ridden {
  const square = knots.map(({ pose }) => pose);
  const wanted = { knots, least };
  let best = laidOver(square, wanted);
  if (!best.joints.every(({ calm }) => calm)) {
    const even = laidOver(evenPoses(knots), wanted);
    best = eased(even.cost < best.cost ? even : best, wanted);
  }
  let at = 0;
  const placedKnots = knots.map((knot, i): RiddenKnot => {
    if (i > 0) at += pathLength(best.joints[i - 1]?.path ?? []);
    const pose = best.poses[i] ?? knot.pose;
    return { ...knot, pose, at, skew: wrapped(pose.angle - knot.pose.angle) };
  });
  return { path: merged(best.joints.flatMap(({ path }) => path)), knots: placedKnots };
}
