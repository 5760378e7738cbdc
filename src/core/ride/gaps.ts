import { halfThickness } from '../constraints/gap.ts';
import type { PlacedPiece } from '../course/placed.ts';
import type { Gait, Horse } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import { type Path, poseAt } from '../plane/path.ts';
import { distance, type Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import { landingFractions, spacing } from './landings.ts';
import type { Gap } from './line.ts';

/** A pole that the line goes over, `at` metres along the path. */
export interface PoleOnPath {
  readonly pole: PlacedPiece;
  readonly pose: Pose;
  readonly at: Metres;
}

/**
 * Where the line, from the middle of a pole on (`way` 1) or back (−1), meets the pole's face; metres along the path.
 * Newton's method from the straight's answer; a line that never meets the face keeps that answer.
 */
function faceAt(path: Path, { pole, pose, at }: PoleOnPath, sign: 1 | -1): Metres {
  const half = pole.figure.width / 2;
  const first = at + sign * halfThickness(pole.figure.width, pole.pose.angle, pose.angle);
  const nx = -Math.sin(pole.pose.angle);
  const ny = Math.cos(pole.pose.angle);
  // The side of the pole on which this face lies.
  const side = sign * Math.sign(nx * Math.cos(pose.angle) + ny * Math.sin(pose.angle));
  let along = first;
  for (let iteration = 0; iteration < 12; iteration += 1) {
    const here = poseAt(path, along);
    const off = side * (nx * (here.x - pose.x) + ny * (here.y - pose.y)) - half;
    const rate = side * (nx * Math.cos(here.angle) + ny * Math.sin(here.angle));
    if (Math.abs(off) < 1e-13) return along;
    if (Math.abs(rate) < 0.1) return first;
    along -= off / rate;
  }
  return Math.abs(along - first) < pole.figure.width ? along : first;
}

/**
 * The gap between two poles that follow each other on a path. `start` is where the path begins on the passage; `from`, `to`
 * and the landings are metres along the passage.
 */
export function gapBetween(
  path: Path,
  [a, b]: readonly [PoleOnPath, PoleOnPath],
  { horse, gait, start }: { horse: Horse; gait: Gait; start: Metres },
): Gap {
  const chord = distance(a.pose, b.pose);
  const direction = Math.atan2(b.pose.y - a.pose.y, b.pose.x - a.pose.x);
  const halfFrom = halfThickness(a.pole.figure.width, a.pole.pose.angle, direction);
  const halfTo = halfThickness(b.pole.figure.width, b.pole.pose.angle, direction);
  const on = (along: Metres): Point => ({
    x: a.pose.x + along * Math.cos(direction),
    y: a.pose.y + along * Math.sin(direction),
  });
  const from = faceAt(path, a, 1);
  const to = faceAt(path, b, -1);
  const taped = chord - halfFrom - halfTo;
  // The horse travels the line and not the tape: around a spoke the two differ by a foot and more.
  const even = spacing(Math.max(to - from, 1e-6), horse.gaits[gait].landing);
  return {
    leg: 0,
    obstacle: a.pole.obstacle,
    gait,
    keys: [a.pole.key, b.pole.key],
    taped,
    ridden: to - from,
    from: from + start,
    to: to + start,
    ends: [on(halfFrom), on(chord - halfTo)],
    landings: {
      ...even,
      places: landingFractions(even.count).map((fraction) => {
        const at = from + fraction * (to - from);
        const { x, y } = poseAt(path, at);
        return { at: at + start, point: { x, y } };
      }),
    },
  };
}
