import { angleToWall } from '../../core/constraints/angle-to-wall.ts';
import type { Constraint } from '../../core/constraints/constraint.ts';
import { lineTurn } from '../../core/constraints/grip.ts';
import type { Arena, Layout } from '../../core/course/course.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { pieceKey, placedObstacle } from '../../core/course/placed.ts';
import { type LayoutOutcome, solveLayout } from '../../core/course/solve-layout.ts';
import type { LengthUnit } from '../../core/measure/quantity.ts';
import { memoizeByIdentity } from '../../core/memo/by-identity.ts';
import type { Pose } from '../../core/plane/pose.ts';

/**
 * A run that is to lie 3 ft off a wall should go there as it lies, and not swing round to it. So whole obstacles that
 * are constrained to others or to walls first keep their headings as well; only where that cannot be met may they turn.
 */

/** Obstacles that a constraint of the layout grips. */
function obstaclesInConstraints(layout: Layout): ReadonlySet<string> {
  return new Set(
    layout.constraints.flatMap(({ grips }) =>
      grips.flatMap((grip) => ('piece' in grip ? [obstacleOf(grip.piece)] : [])),
    ),
  );
}

/** The layout in which these obstacles also keep their headings; the same object for the same layout. */
const withHeadingConstraints = memoizeByIdentity((layout: Layout): Layout => {
  const ids = obstaclesInConstraints(layout);
  const headings = layout.obstacles.flatMap((obstacle): Constraint[] => {
    const [first] = placedObstacle(obstacle).pieces;
    if (!ids.has(obstacle.id) || first === undefined) return [];
    const grips = [{ piece: pieceKey(obstacle.id, first.piece.id) }, { wall: 'south' as const }];
    const hold = lineTurn(first.pose.angle);
    return [{ id: `steady-${obstacle.id}`, kind: angleToWall.id, grips, hold, side: 1 }];
  });
  const made = headings.length === 0 ? layout : { ...layout, constraints: [...layout.constraints, ...headings] };
  return made;
});

/** As `solveCourse`, with headings kept where they can be. */
export function solveKeepingHeadings(
  layout: Layout,
  arena: Arena,
  targets: ReadonlyMap<string, Pose>,
  unit: LengthUnit,
): LayoutOutcome {
  const constrained = withHeadingConstraints(layout);
  if (constrained !== layout) {
    const outcome = solveLayout(constrained, arena, targets, { unit });
    if (outcome.kind === 'settled') {
      if (outcome.layout === constrained) return { kind: 'settled', layout };
      return { kind: 'settled', layout: { ...outcome.layout, constraints: layout.constraints } };
    }
  }
  return solveLayout(layout, arena, targets, { unit });
}
