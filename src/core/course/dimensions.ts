import type { GrippedPose } from '../constraints/constraint.ts';
import { axisPoint } from '../constraints/grip.ts';
import { isMeasurable } from '../constraints/residuals.ts';
import type { LengthUnit } from '../measure/quantity.ts';
import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Point } from '../plane/point.ts';
import type { Arena, Layout } from './course.ts';
import type { PlacedPiece } from './placed.ts';
import {
  constraintSentence,
  grippedPoses,
  placedPieces,
  printMeasure,
  type ResolvedConstraint,
  resolvedConstraints,
} from './resolved-constraints.ts';

/** A constraint with a number, as a dimension on the ground that can be read and typed over. */
export interface Dimension {
  /** The constraint: `obstacle/constraint`, or the layout's own id. */
  readonly key: string;
  readonly kind: string;
  readonly unit: 'm' | 'rad';
  readonly from: Point;
  readonly to: Point;
  /**
   * What it holds, or for a reference dimension what it measures now. Metres or radians; NaN where the pieces lie so that
   * it measures nothing, printed as a dash.
   */
  readonly value: number;
  readonly printed: string;
  /** False: a reference dimension, measured and not enforced. */
  readonly isDriving: boolean;
  readonly says: string;
}

function grippedPoints(gripped: readonly GrippedPose[]): readonly [Point, Point] {
  const [first, second] = gripped.map((each): Point => {
    const { x, y } = axisPoint(each);
    return { x, y };
  });
  const from = first ?? { x: 0, y: 0 };
  return [from, second ?? from];
}

interface Around {
  readonly layout: Layout;
  readonly arena: Arena;
  readonly unit: LengthUnit;
  readonly pieces: ReadonlyMap<string, PlacedPiece>;
}

/** The dimension of a constraint; absent: it has no number, or a piece is not there. */
export function dimensionOf(
  resolved: ResolvedConstraint,
  { layout, arena, unit, pieces }: Around,
): Dimension | undefined {
  const { key, kind, constraint } = resolved;
  const gripped = grippedPoses(resolved, arena, pieces);
  if (kind.unit === 'none' || gripped === undefined) return undefined;
  const { hold, side = 1 } = constraint;
  const value = hold ?? (isMeasurable(kind, gripped, side) ? kind.measure(gripped, side) : Number.NaN);
  const [from, to] = kind.dimension?.(gripped, side) ?? grippedPoints(gripped);
  const printed = printMeasure(kind, value, unit);
  return {
    key,
    kind: kind.id,
    unit: kind.unit,
    ...{ from, to, value, printed, isDriving: hold !== undefined },
    // Read by few: a drag that moves the dimension reads none.
    get says(): string {
      return constraintSentence({ ...resolved, constraint: { ...constraint, hold: value } }, layout, unit);
    },
  };
}

/** The dimensions of all constraints with a number, in the order of the file; the same list for the same layout. */
export const dimensions = memoizeByIdentity((layout: Layout, arena: Arena, unit: LengthUnit): readonly Dimension[] => {
  const pieces = placedPieces(layout);
  return resolvedConstraints(layout).flatMap((each) => dimensionOf(each, { layout, arena, unit, pieces }) ?? []);
});
