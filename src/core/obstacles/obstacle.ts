/**
 * obstacles/ turns a designer's terms (a fan of three, 6 ft at two-thirds) into pieces, constraints, and ways to ride.
 * One file a kind; `obstacles.ts` lists them.
 */
import type { Constraint } from '../constraints/constraint.ts';
import type { Gait } from '../horses/horse.ts';
import type { Metres } from '../measure/quantity.ts';
import type { Params, Values } from '../pieces/params.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Pose } from '../plane/pose.ts';
import type { Passage } from './passage.ts';
import type { Wording } from './wording.ts';

/**
 * Pieces that are ridden as one, as stored. What lies on the ground is `pieces`; `kind` and `values` are what they were
 * built from. `pose` is the obstacle's frame on the ground, in which the poses of its pieces are given.
 */
export interface Obstacle {
  readonly id: string;
  readonly kind: string;
  /** A designer's own name for it; absent: the kind's title. */
  readonly name?: string;
  readonly values: Values;
  readonly pose: Pose;
  /** −1: the mirror image of what the kind builds. */
  readonly side: 1 | -1;
  readonly pieces: readonly Piece[];
  readonly constraints: readonly Constraint[];
  readonly passages: readonly Passage[];
}

/** What a kind makes of its values: poses in the obstacle's frame, origin at its middle, metres. */
export interface Built {
  readonly kind: 'built';
  readonly pieces: readonly Piece[];
  readonly constraints: readonly Constraint[];
  readonly passages: readonly Passage[];
  /** Named results that a designer asks for (radii, angles, gaps), SI units. */
  readonly facts: Readonly<Record<string, number>>;
}

/** A rejection with its reason, and values that would work. */
export interface Infeasible {
  readonly kind: 'infeasible';
  readonly why: string;
  /** Only the values that change; with them, what was asked for builds. Absent when no near values work. */
  readonly nearest?: Values;
  readonly facts: Readonly<Record<string, number>>;
}

/** Kinds that ask the same of the horse, in the order in which they are offered. */
export const OBSTACLE_FAMILIES = [
  { id: 'poles', title: 'Over poles' },
  { id: 'backing', title: 'Back through' },
  { id: 'side-passing', title: 'Side pass' },
  { id: 'work', title: 'Gate, bridge, water' },
  { id: 'markers', title: 'Markers' },
  { id: 'scenery', title: 'Scenery and own' },
] as const;
type ObstacleFamily = (typeof OBSTACLE_FAMILIES)[number]['id'];

/** The parameter that sets the gaps on an obstacle's line. */
export interface GapParam {
  readonly param: string;
  /** The value with which a gap that is `taped` now becomes `wanted`. Metres. */
  value(values: Values, taped: Metres, wanted: Metres): number;
}

export interface ObstacleKind {
  readonly id: string;
  readonly title: string;
  /** What else people call it, for whoever looks for it by name. */
  readonly alsoCalled?: readonly string[];
  /** What the trade calls one of its poles by the gait over it, and where nobody rides it; absent: the title serves for all. */
  readonly nounByGait?: Readonly<Record<Gait | 'none', string>>;
  readonly family: ObstacleFamily;
  /** One sentence: what it is and what it asks of the horse. */
  readonly about: string;
  readonly params: Params;
  /** What a pattern's words call it; absent: its pieces are named. */
  readonly words?: Wording;
  /** Limits of a rule book that are about obstacles of this kind, by name; absent: none is. */
  readonly limits?: readonly string[];
  /** Present when one parameter sets its gaps: a fix of a gap turns that. */
  readonly gapParam?: GapParam;
  /** Present when its poles are crossed on one line: the crossings move together along their poles. */
  readonly crossedTogether?: true;
  /** What is usual for these values and not for all, such as a gap that suits the gait; absent: nothing is. */
  usual?(given: Values): Values;
  /** Values are complete and inside the bounds of `params`. */
  build(values: Values): Built | Infeasible;
}
