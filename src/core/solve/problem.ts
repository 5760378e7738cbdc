/**
 * solve/ brings residuals to zero. It knows numbers only: rigid bodies with a pose each, and ties between them that say how
 * far they are from being met. It knows no pole, no gap and no course.
 */
import type { Metres } from '../measure/quantity.ts';
import type { Pose } from '../plane/pose.ts';

/** A rigid thing. What is heavy moves least; an infinite weight never moves. */
export interface Body {
  readonly id: string;
  readonly pose: Pose;
  readonly weight: number;
  /** Turning by one radian counts as moving this far: for an even rod its length / √12. */
  readonly radiusOfGyration: Metres;
}

/** One equation's value, and its derivative by x, y and angle of each body of the tie. */
export interface Residual {
  readonly value: number;
  readonly gradient: readonly (readonly [number, number, number])[];
}

/** Equations between bodies. The number of rows is the same at every pose. */
export interface ConstraintEquations {
  readonly id: string;
  readonly bodies: readonly string[];
  /** The poses are lent: they change after the call. */
  residuals(poses: readonly Pose[]): readonly Residual[];
}

/** What is worked out from a problem is remembered with it: solving the same object again costs less. */
export interface Problem {
  readonly bodies: readonly Body[];
  readonly constraints: readonly ConstraintEquations[];
}

/** Where hands would have bodies, by body id: soft targets, reached as far as the ties allow. */
export type Targets = ReadonlyMap<string, Pose>;

export type NonEmpty<Thing> = readonly [Thing, ...Thing[]];

/**
 * `met`: all ties that were asked about hold within `MET`; `poses` has every body, and a body that did not move has the
 * same object. `clash`: sets of ties that cannot hold together, each of which could once any one of its ties is dropped.
 * `lost`: no answer was found from here, though none was shown to be impossible; `left` is the largest residual.
 */
export type Outcome =
  | { readonly outcome: 'met'; readonly poses: ReadonlyMap<string, Pose> }
  | { readonly outcome: 'clash'; readonly conflicts: NonEmpty<NonEmpty<string>> }
  | { readonly outcome: 'lost'; readonly worst: NonEmpty<string>; readonly maxResidual: number };

/** A residual no larger than this, in metres or radians, is zero. */
export const RESIDUAL_TOLERANCE = 1e-10;
