import { angleBetween } from './angle-between.ts';
import { angleToWall } from './angle-to-wall.ts';
import { apart } from './apart.ts';
import { beside } from './beside.ts';
import { centresLevel } from './centres-level.ts';
import { clearOfWall } from './clear-of-wall.ts';
import type { ConstraintKind } from './constraint.ts';
import { endsLevel } from './ends-level.ts';
import { endsTouching } from './ends-touching.ts';
import { equalGaps } from './equal-gaps.ts';
import { fixed } from './fixed.ts';
import { gap } from './gap.ts';
import { gapEnds } from './gap-ends.ts';
import { inLine } from './in-line.ts';
import { clearOfMarker } from './marker-clear.ts';
import { mirrored } from './mirrored.ts';
import { mirroredCentre } from './mirrored-centre.ts';
import { offWall } from './off-wall.ts';
import { onArc } from './on-arc.ts';
import { onLine } from './on-line.ts';
import { parallel } from './parallel.ts';
import { square } from './square.ts';
import { stripeToStripe } from './stripe-to-stripe.ts';
import { touching } from './touching.ts';

/** Every kind of constraint. A new kind is one file and one line here. */
export const CONSTRAINT_KINDS: readonly ConstraintKind[] = [
  gap,
  gapEnds,
  equalGaps,
  parallel,
  square,
  angleBetween,
  inLine,
  onLine,
  endsLevel,
  centresLevel,
  stripeToStripe,
  touching,
  endsTouching,
  apart,
  beside,
  clearOfMarker,
  onArc,
  mirrored,
  mirroredCentre,
  angleToWall,
  offWall,
  clearOfWall,
  fixed,
];

const byId = new Map(CONSTRAINT_KINDS.map((kind) => [kind.id, kind]));

export function constraintKind(id: string): ConstraintKind | undefined {
  return byId.get(id);
}
