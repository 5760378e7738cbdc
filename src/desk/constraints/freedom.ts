import { type ConstraintStatus, constraintStatus } from '../../core/course/constraint-status.ts';
import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { placedPieces, resolvedConstraints } from '../../core/course/resolved-constraints.ts';
import { solveLayout } from '../../core/course/solve-layout.ts';
import { memoizeByIdentity, memoizeByText } from '../../core/memo/by-identity.ts';
import { normalizeAngle } from '../../core/plane/pose.ts';
import { survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import { isLong } from './constraint-candidates.ts';
import { conflictWithDisplayNames } from './display-names.ts';

/** How far an obstacle is pushed to see whether it can move: metres and radians. */
const PUSH = 0.01;
/** It can move when it follows more than this share of the push. */
const GIVES = 1 / 4;

/** The constraint status of a course's layout; worked out on first access, then cached. */
export const constraintStatusOf = memoizeByIdentity((course: Course): ConstraintStatus => {
  const found = constraintStatus(currentLayout(course), course.arena, { unit: course.unit });
  const conflicts = found.conflicts.map((conflict) => conflictWithDisplayNames(conflict, survey(course)));
  return { ...found, conflicts };
});

/** How many small things of an obstacle may turn on the spot, which nobody can see. */
function idleTurns(layout: Layout, id: string): number {
  const holdings = resolvedConstraints(layout).filter((each) => each.owner === id);
  const pieces = placedPieces(layout);
  return [...pieces.values()].filter(
    (piece) =>
      piece.obstacle === id &&
      !isLong(piece) &&
      holdings
        .filter(({ grips }) => grips.some((grip) => 'piece' in grip && grip.piece === piece.key))
        .every(({ kind }) => kind.leavesTurn),
  ).length;
}

/** The degrees of freedom of an obstacle in words: "Can still slide and turn.", "Held firmly." */
export const freedomDescription = memoizeByText((course: Course, id: string): string => {
  const layout = currentLayout(course);
  const obstacle = layout.obstacles.find((each) => each.id === id);
  const freedom = constraintStatusOf(course).freedoms.find((each) => each.obstacle === id);
  if (obstacle === undefined || freedom === undefined) return '';
  const { pose } = obstacle;
  const givesWay = (dx: number, dy: number, turn: number) => {
    const target = { x: pose.x + dx, y: pose.y + dy, angle: normalizeAngle(pose.angle + turn) };
    const outcome = solveLayout(layout, course.arena, new Map([[id, target]]), { unit: course.unit });
    const end = outcome.kind === 'settled' ? outcome.layout.obstacles.find((each) => each.id === id)?.pose : undefined;
    if (end === undefined) return false;
    const went =
      turn === 0 ? (end.x - pose.x) * dx + (end.y - pose.y) * dy : normalizeAngle(end.angle - pose.angle) * turn;
    return went > GIVES * PUSH * PUSH;
  };
  if (freedom.ways === 0) return messages.heldFirmly();
  return messages.freedom({
    along: givesWay(PUSH, 0, 0),
    across: givesWay(0, PUSH, 0),
    turns: givesWay(0, 0, PUSH),
    inside: freedom.inside > idleTurns(layout, id),
  });
});
