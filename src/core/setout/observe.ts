import { beside } from '../constraints/beside.ts';
import type { GrippedPose, ObservationKind } from '../constraints/constraint.ts';
import { endsLevel } from '../constraints/ends-level.ts';
import { gapResidual } from '../constraints/gap.ts';
import { type AxisPoint, axisMiddle, axisPoint, pointGradient, residual } from '../constraints/grip.ts';
import { offsetFromLine } from '../constraints/in-line.ts';
import { clearOfMarker } from '../constraints/marker-clear.ts';
import { offWallResidual } from '../constraints/off-wall.ts';
import { square } from '../constraints/square.ts';
import { touching } from '../constraints/touching.ts';
import type { Residual } from '../solve/problem.ts';
import type { Observable } from './setout.ts';

/** What an observation is made on: the two grips where they lie, and whether each is a small thing. */
export interface ObservedPair {
  readonly gripped: readonly [GrippedPose, GrippedPose];
  readonly small: readonly [boolean, boolean];
}

/** The straight distance of two points, less what small things cover of it. */
function straight(a: AxisPoint, b: AxisPoint, covered: number): Residual {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const far = Math.hypot(dx, dy);
  const gx = far === 0 ? 1 : dx / far;
  const gy = far === 0 ? 0 : dy / far;
  return residual(far - covered, pointGradient(a, -gx, -gy), pointGradient(b, gx, gy));
}

function along(first: AxisPoint, second: AxisPoint): Residual {
  const dx = second.x - first.x;
  const dy = second.y - first.y;
  return residual(
    first.ux * dx + first.uy * dy,
    pointGradient(first, -first.ux, -first.uy, first.ux * dy - first.uy * dx),
    pointGradient(second, first.ux, first.uy),
  );
}

/** A place on a wall, so many metres from its start: walls run counter-clockwise with the arena on their left. */
export function wallPoint(wall: GrippedPose, length: number, from: number): AxisPoint {
  const { ux, uy, x, y } = axisMiddle(wall);
  const reach = from - length / 2;
  return { x: x + reach * ux, y: y + reach * uy, ux, uy, axialOffset: reach };
}

type Observe = (pair: ObservedPair, of: Observable, wall: number) => Residual;

const OBSERVE: Readonly<Record<ObservationKind, Observe>> = {
  gap: ({ gripped }, { side }) => gapResidual(gripped, side),
  between({ gripped: [first, second], small }) {
    const covered = (small[0] ? first.width / 2 : 0) + (small[1] ? second.width / 2 : 0);
    return straight(axisPoint(first), axisPoint(second), covered);
  },
  beside: ({ gripped }, { side }) => first(beside.residuals(gripped, 0, side)),
  clear: ({ gripped }) => first(clearOfMarker.residuals(gripped, 0, 1)),
  ahead: ({ gripped: [held, thing] }) => along(axisPoint(held), axisPoint(thing)),
  level: ({ gripped }) => first(endsLevel.residuals(gripped, 0, 1)),
  'in-line': ({ gripped }) => offsetFromLine(gripped, 'in-line'),
  square: ({ gripped }) => first(square.residuals(gripped, 0, 1)),
  against: ({ gripped }, { side }) => first(touching.residuals(gripped, 0, side)),
  'off-wall': ({ gripped }) => offWallResidual(gripped),
  'along-wall'({ gripped: [thing, wall] }, { from = 0, runs = 1 }, length) {
    const { value, gradient } = along(wallPoint(wall, length, from), axisPoint(thing));
    const [wallward, own] = gradient;
    return { value: runs * value, gradient: [scaled(own, runs), scaled(wallward, runs)] };
  },
  'from-rail'({ gripped: [thing, wall], small }, { from = 0 }, length) {
    const { value, gradient } = straight(
      wallPoint(wall, length, from),
      axisPoint(thing),
      small[0] ? thing.width / 2 : 0,
    );
    return { value, gradient: [gradient[1] ?? ZERO, gradient[0] ?? ZERO] };
  },
};

const ZERO = [0, 0, 0] as const;

function scaled(slope: readonly [number, number, number] = ZERO, by: number): readonly [number, number, number] {
  return [by * slope[0], by * slope[1], by * slope[2]];
}

function first(residuals: readonly Residual[]): Residual {
  return residuals[0] as Residual;
}

/**
 * The value of an observation where its pieces lie, metres or radians, and its gradient by the poses of its two grips.
 * `wall` is the length of the gripped wall.
 */
export function observed(of: Observable, pair: ObservedPair, wall = 0): Residual {
  return OBSERVE[of.kind](pair, of, wall);
}
