import type { Metres, Radians } from '../measure/quantity.ts';
import type { Point } from '../plane/point.ts';
import type { Residual } from '../solve/problem.ts';
import type { ConstraintKind, GrippedPose } from './constraint.ts';
import { axisPoint, observedPair, pairOf, pointAlong, pointGradient, residual, ZERO_GRADIENT } from './grip.ts';

/**
 * Cosine of the angle between the tape and a pole's normal below which a tape measures no gap (about 75°). Below it the
 * equations continue smoothly, so that the solver can come back.
 */
export const FLATTEST = 0.25;

/** A function of the cosine with its derivative. */
type ValueAndSlope = readonly [value: number, slope: number];

/** 1 where the tape crosses the first pole squarely, 0 where it lies along it, below 0 on the wrong side; smooth. */
function sidedness(cosine: number): ValueAndSlope {
  if (cosine >= FLATTEST) return [1, 0];
  const part = cosine / FLATTEST;
  return [part * (2 - part), (2 - 2 * part) / FLATTEST];
}

/** 1/cosine, continued below `FLATTEST` by its tangent, which grows without bound towards the wrong side. */
function secant(cosine: number): ValueAndSlope {
  if (cosine >= FLATTEST) return [1 / cosine, -1 / cosine ** 2];
  return [2 / FLATTEST - cosine / FLATTEST ** 2, -1 / FLATTEST ** 2];
}

/**
 * 1/cosine for a pole with two near faces: the same from both sides, and with zero slope where the tape lies along it.
 */
function evenSecant(cosine: number): ValueAndSlope {
  if (cosine >= FLATTEST) return [1 / cosine, -1 / cosine ** 2];
  return [1.5 / FLATTEST - cosine ** 2 / (2 * FLATTEST ** 3), -cosine / FLATTEST ** 3];
}

/**
 * The taped gap and its gradient: the straight tape through the two gripped axis points, from near face to near face: c
 * − t₁/(2·cos α₁) − t₂/(2·cos α₂), with c the chord and αᵢ its angle to the normal of pole i (DESIGN, geometry).
 * `side`: on which side of the first pole the second lies (1: its +y side). As the tape turns along the first pole and
 * to its wrong side, the chord counts less and then negatively: no gap is met there, and every step leads back to the
 * side that was meant.
 */
export function gapResidual(gripped: readonly GrippedPose[], side: 1 | -1): Residual {
  const [first, second] = pairOf(gripped, 'gap');
  const a = axisPoint(first);
  const b = axisPoint(second);
  const half1 = first.width / 2;
  const half2 = second.width / 2;
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const chord = Math.hypot(dx, dy);
  // The normal of the first pole towards the second, and of the second away from the first.
  const ax = -a.uy * side;
  const ay = a.ux * side;
  if (chord === 0) {
    const nothing = -half1 * secant(0)[0] - half2 * evenSecant(0)[0];
    return residual(
      nothing,
      pointGradient(a, -ax / FLATTEST, -ay / FLATTEST),
      pointGradient(b, ax / FLATTEST, ay / FLATTEST),
    );
  }
  const facing = b.ux * dy - b.uy * dx < 0 ? -1 : 1;
  const bx = -b.uy * facing;
  const by = b.ux * facing;
  const cos1 = (ax * dx + ay * dy) / chord;
  const cos2 = (bx * dx + by * dy) / chord;
  const [sided, bySided] = sidedness(cos1);
  const [tilt1, byTilt1] = secant(cos1);
  const [tilt2, byTilt2] = evenSecant(cos2);
  const byCos1 = chord * bySided - half1 * byTilt1;
  const byCos2 = -half2 * byTilt2;
  // The cosine changes with the chord by (normal − cosine · direction) / length, and as its pole turns by the spin.
  const byLength = sided - (byCos1 * cos1 + byCos2 * cos2) / chord;
  const gx = (byLength * dx + byCos1 * ax + byCos2 * bx) / chord;
  const gy = (byLength * dy + byCos1 * ay + byCos2 * by) / chord;
  const spin1 = (-side * byCos1 * (a.ux * dx + a.uy * dy)) / chord;
  const spin2 = (-facing * byCos2 * (b.ux * dx + b.uy * dy)) / chord;
  return residual(
    chord * sided - half1 * tilt1 - half2 * tilt2,
    pointGradient(a, -gx, -gy, spin1),
    pointGradient(b, gx, gy, spin2),
  );
}

/** What a tape along `normal`'s side lacks to the least angle at which it measures: metres, 0 or less. */
function boundShortfall(normal: Point, d: Point): number {
  return Math.min(0, normal.x * d.x + normal.y * d.y - FLATTEST * Math.hypot(d.x, d.y));
}

/**
 * A tape measures a gap only where it crosses both poles at more than about 15°. One residual a pole: 0 where it does,
 * else what it lacks, metres. Without them the gap's own equation could be met by poles that lie in line.
 */
export function tapeBounds(gripped: readonly GrippedPose[], side: 1 | -1): readonly Residual[] {
  const [first, second] = pairOf(gripped, 'gap');
  const a = axisPoint(first);
  const b = axisPoint(second);
  const d = { x: b.x - a.x, y: b.y - a.y };
  const chord = Math.hypot(d.x, d.y);
  const facing = b.ux * d.y - b.uy * d.x < 0 ? -1 : 1;
  return ([1, 2] as const).map((which) => {
    const pole = which === 1 ? a : b;
    const way = which === 1 ? side : facing;
    const normal = { x: -pole.uy * way, y: pole.ux * way };
    const value = boundShortfall(normal, d);
    if (value === 0 || chord === 0) return { value: 0, gradient: [ZERO_GRADIENT, ZERO_GRADIENT] };
    const gx = normal.x - (FLATTEST * d.x) / chord;
    const gy = normal.y - (FLATTEST * d.y) / chord;
    const spin = -way * (pole.ux * d.x + pole.uy * d.y);
    return residual(
      value,
      pointGradient(a, -gx, -gy, which === 1 ? spin : 0),
      pointGradient(b, gx, gy, which === 2 ? spin : 0),
    );
  });
}

/** Half of a pole's thickness measured along a tape, from its axis to its face: both headings on the ground. */
export function halfThickness(thickness: Metres, pole: Radians, tape: Radians): Metres {
  return thickness / 2 / Math.max(FLATTEST, Math.abs(Math.sin(tape - pole)));
}

/** The tape of a gap: on the straight from one gripped point to the other, from near face to near face. */
export function gapDimension(gripped: readonly GrippedPose[]): readonly [Point, Point] {
  const [first, second] = pairOf(gripped, 'gap');
  const a = axisPoint(first);
  const b = axisPoint(second);
  const chord = Math.hypot(b.x - a.x, b.y - a.y);
  if (chord === 0) return [a, b];
  const direction = { ux: (b.x - a.x) / chord, uy: (b.y - a.y) / chord };
  const along = Math.atan2(b.y - a.y, b.x - a.x);
  return [
    pointAlong(a, direction, halfThickness(first.width, first.pose.angle, along)),
    pointAlong(b, direction, -halfThickness(second.width, second.pose.angle, along)),
  ];
}

/** The gap between two poles, inside to inside, at a fraction along each. */
export const gap: ConstraintKind = {
  id: 'gap',
  title: 'Gap, inside to inside',
  unit: 'm',
  takes: ['piece', 'piece'],
  suits: ['long', 'long'],
  sided: true,
  isPlausible: (gripped, side) => gapResidual(gripped, side).value >= 0,
  measure: (gripped, side) => gapResidual(gripped, side).value,
  residuals(gripped, hold, side) {
    const now = gapResidual(gripped, side);
    return [{ value: now.value - hold, gradient: now.gradient }];
  },
  bounds: tapeBounds,
  dimension: gapDimension,
  observed: ([first, second]) => [observedPair('gap', first, second)],
  sentence: ([first, second], value) => `The gap between ${first} and ${second} is ${value}, inside to inside.`,
};
