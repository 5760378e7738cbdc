import { angleBetween } from './angle-between.ts';
import { angleToWall } from './angle-to-wall.ts';
import { apart } from './apart.ts';
import type { ConstraintKind } from './constraint.ts';
import { endsLevel } from './ends-level.ts';
import { fixed } from './fixed.ts';
import { gap } from './gap.ts';
import { inLine } from './in-line.ts';
import { markerClear } from './marker-clear.ts';
import { offWall } from './off-wall.ts';
import { onLine } from './on-line.ts';
import { parallel } from './parallel.ts';
import { square } from './square.ts';
import { touching } from './touching.ts';

/** Every kind of constraint. A new kind is one file and one line here. */
export const CONSTRAINT_KINDS: readonly ConstraintKind[] = [
  gap,
  parallel,
  square,
  angleBetween,
  inLine,
  onLine,
  endsLevel,
  touching,
  apart,
  markerClear,
  angleToWall,
  offWall,
  fixed,
];

const byId = new Map(CONSTRAINT_KINDS.map((kind) => [kind.id, kind]));

export function constraintKind(id: string): ConstraintKind | undefined {
  return byId.get(id);
}
