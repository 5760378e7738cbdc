/**
 * constraints/ has the kinds of constraint: one file, one set of equations and one sentence a kind. A kind turns
 * gripped poses into residuals and their gradients; solve/ brings them to zero.
 */
import type { Point } from '../plane/point.ts';
import type { Pose } from '../plane/pose.ts';
import type { Residual } from '../solve/problem.ts';

/** The arena's walls, by compass with +y to the north and +x to the east: south y = 0, west x = 0. */
export type Wall = 'south' | 'east' | 'north' | 'west';

/** What a constraint refers to: a piece at a fraction along its length (0 … 1, 0 at its −x end), or a wall. */
export type Grip = { readonly piece: string; readonly at?: number } | { readonly wall: Wall };

/**
 * As stored. Without `hold` it is a reference dimension: measured, not enforced. `side` says which of two mirror images
 * was meant, and never changes. In an obstacle a grip names the obstacle's own pieces; in a layout it names
 * `obstacle/piece`.
 */
export interface Constraint {
  readonly id: string;
  readonly kind: string;
  readonly grips: readonly Grip[];
  /** Metres or radians, by the kind. */
  readonly hold?: number;
  readonly side?: 1 | -1;
}

/** A grip with its numbers, for the equations. A wall's pose is at its middle, +x along it, +y into the arena. */
export interface GrippedPose {
  readonly pose: Pose;
  /** Size of the piece along its x and y, metres; 0 for a wall. */
  readonly length: number;
  readonly width: number;
  /** Fraction along x, 0 … 1. */
  readonly at: number;
}

/**
 * What a crew observes with a tape, a board or the eye, by its grips in this order; `at` is a fraction along a piece, 0 … 1 from its end A (its −x end).
 *
 * | kind | grips | the reading |
 * |---|---|---|
 * | gap | long, long | on the straight through the two gripped points of their middle lines, from near face to near face |
 * | between | piece, piece | straight from one gripped point to the other; a small thing counts from the edge of its base, as if it faced the other |
 * | beside | small, long | square to the long piece, from its side to the edge of the small thing's base |
 * | clear | small, long | along the long piece, from the edge of the small thing's base to the near end |
 * | ahead | long, piece | along the first's middle line, from its gripped point to where the second's is level with it |
 * | level | long, long | how far the second's gripped point is ahead of the first's, along the mean of their directions |
 * | in-line | long, piece | how far the second's gripped point is off the first's middle line |
 * | square | long, long | the angle between them less a right angle, radians; 0 when they are square |
 * | against | end, long | from the first's gripped end square to the second's near side; 0 when it lies against it |
 * | off-wall | piece, wall | square to the wall, to the nearer corner of the cut across the piece |
 * | along-wall | piece, wall | along the wall from its corner to where the gripped point is square to it |
 * | from-rail | piece, wall | straight to the gripped point from a place on the wall |
 */
export type ObservationKind =
  | 'gap'
  | 'between'
  | 'beside'
  | 'clear'
  | 'ahead'
  | 'level'
  | 'in-line'
  | 'square'
  | 'against'
  | 'off-wall'
  | 'along-wall'
  | 'from-rail';

/** One observation by which a crew brings a constraint about. */
export interface ObservedRelation {
  readonly kind: ObservationKind;
  readonly grips: readonly [Grip, Grip];
}

export interface ConstraintKind {
  readonly id: string;
  readonly title: string;
  readonly unit: 'm' | 'rad' | 'none';
  /** How many grips it takes, and of what. */
  readonly takes: readonly ('piece' | 'wall')[];
  /** Of which pieces it is worth suggesting, in the order of its grips, walls left out. */
  readonly suits: readonly ('any' | 'long' | 'small')[];
  /** Present when it tells one side from the other: then a constraint stores its `side`. */
  readonly sided?: true;
  /** The fractions at which it may grip its first two pieces when it is about ends; absent: their middles do. */
  readonly ends?: readonly [readonly number[], readonly number[]];
  /** Present when it pins its pieces: it has no equations, and the solver leaves the pieces where they are. */
  readonly pins?: true;
  /** Present when turning a small piece on its spot does not change it. */
  readonly leavesTurn?: true;
  /** Whether pieces that lie so could be meant by it, so that it is worth suggesting; absent: always. */
  isPlausible?(gripped: readonly GrippedPose[], side: 1 | -1): boolean;
  /** Whether the pieces lie on this side now; absent: where `measure` is not negative. */
  isOnSide?(gripped: readonly GrippedPose[], side: 1 | -1): boolean;
  /** The value now, metres or radians. */
  measure(gripped: readonly GrippedPose[], side: 1 | -1): number;
  /** The equations: all zero when the constraint is met, inside its bounds. */
  residuals(gripped: readonly GrippedPose[], hold: number, side: 1 | -1): readonly Residual[];
  /**
   * Inequalities, where there are some: a residual of 0 without a gradient inside, of the shortfall outside. Outside of
   * them `measure` means nothing on the ground, so the constraint is not met there.
   */
  bounds?(gripped: readonly GrippedPose[], side: 1 | -1): readonly Residual[];
  /** The ends of its dimension line on the ground; absent: the gripped points. */
  dimension?(gripped: readonly GrippedPose[], side: 1 | -1): readonly [Point, Point];
  /** How a crew brings it about, by its stored grips; absent: by measures that follow from where the pieces lie. */
  observed?(grips: readonly Grip[]): readonly ObservedRelation[];
  /** One plain sentence; `value` is already printed in the course's unit. */
  sentence(names: readonly string[], value: string): string;
}
