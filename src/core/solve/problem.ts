/**
 * solve/ brings residuals to zero. It knows only numbers: rigid bodies with a pose each, and constraint equations
 * between them. It knows no pole, no gap and no course.
 */
import type { Metres } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';

/** A rigid body. The heavier it is the less it moves; one with infinite weight never moves. */
export interface Body {
  readonly id: string;
  readonly pose: Pose;
  readonly weight: number;
  /** Radius of gyration, metres: turning by one radian counts as moving this far. For an even rod its length / √12. */
  readonly radiusOfGyration: Metres;
}

/** The value of one equation, and its gradient by x, y and angle of each of its bodies. */
export interface Residual {
  readonly value: number;
  readonly gradient: readonly (readonly [number, number, number])[];
}

/** The equations of one constraint. Their number is the same at every pose. */
export interface ConstraintEquations {
  readonly id: string;
  readonly bodies: readonly string[];
  /** The poses are only lent: they change after the call. */
  residuals(poses: readonly Pose[]): readonly Residual[];
}

/** What is worked out from a problem is cached with it: solving the same object again costs less. */
export interface Problem {
  readonly bodies: readonly Body[];
  readonly constraints: readonly ConstraintEquations[];
}

/** Where bodies are dragged to, by body id: approached as far as the constraints allow. */
export type Targets = ReadonlyMap<string, Pose>;

export type NonEmpty<Thing> = readonly [Thing, ...Thing[]];

/**
 * `met`: all constraints that were asked about hold within `RESIDUAL_TOLERANCE`; `poses` has every body, and a body
 * that did not move has the same object. `conflict`: conflicts, sets of constraints that cannot all hold though they can
 * when any one is dropped. `lost`: no solution was found from here, though none was shown to be impossible; `maxResidual` is
 * the largest residual.
 */
export type Outcome =
  | { readonly outcome: 'met'; readonly poses: ReadonlyMap<string, Pose> }
  | { readonly outcome: 'conflict'; readonly conflicts: NonEmpty<NonEmpty<string>> }
  | { readonly outcome: 'lost'; readonly worst: NonEmpty<string>; readonly maxResidual: number };

/** A residual no larger than this, in metres or radians, is zero. */
export const RESIDUAL_TOLERANCE = 1e-10;
