import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import { solveLayout } from '../../core/course/solve-layout.ts';
import { TOUCH } from '../../core/plane/point.ts';
import { compose, normalizeAngle, type Pose } from '../../core/plane/pose.ts';
import { survey } from '../../core/survey.ts';
import { messages } from '../../words/desk.ts';
import type { Keys } from '../selection/selection.ts';
import { withDisplayNames } from './display-names.ts';
import { solveKeepingHeadings } from './solve-steady.ts';

/** A course in which things moved to where they were asked to, or why they cannot. */
export type MoveOutcome =
  | {
      readonly kind: 'settled';
      readonly course: Course;
      /** Whether they are exactly where they were asked to be; otherwise a constraint kept them from it. */
      readonly exact: boolean;
      /** What gave way to it, as sentences; absent: nothing. */
      readonly gaveWay?: readonly string[];
    }
  | { readonly kind: 'stuck'; readonly why: string };

function isTogether(a: Pose | undefined, b: Pose | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  return Math.hypot(a.x - b.x, a.y - b.y) < TOUCH && Math.abs(normalizeAngle(a.angle - b.angle)) < TOUCH;
}

/** Where a piece lies on the ground. */
function piecePose(layout: Layout, key: string): Pose | undefined {
  const obstacle = layout.obstacles.find((each) => each.id === obstacleOf(key));
  const piece = obstacle?.pieces.find((each) => each.id === pieceOf(key));
  return obstacle === undefined || piece === undefined ? undefined : compose(obstacle.pose, piece.pose);
}

/** Puts one piece at a pose on the ground while every constraint stays met. */
export function movePiece(course: Course, key: string, asked: { pose: Pose; name: string }): MoveOutcome {
  const layout = currentLayout(course);
  const outcome = solveLayout(layout, course.arena, new Map([[key, asked.pose]]), { unit: course.unit });
  if (outcome.kind !== 'settled') return { kind: 'stuck', why: withDisplayNames(outcome.says, survey(course)) };
  if (outcome.layout === layout) return { kind: 'stuck', why: messages.cannotMove(asked.name) };
  return {
    kind: 'settled',
    course: replaceLayout(course, () => outcome.layout),
    exact: isTogether(piecePose(outcome.layout, key), asked.pose),
  };
}

/** Whether anything but their own frame holds the obstacles: a constraint to others or to a wall, or a fixed piece. */
export function isConstrained(course: Course, ids: Keys): boolean {
  const { constraints, obstacles } = currentLayout(course);
  if (obstacles.some((each) => ids.includes(each.id) && each.pieces.some((piece) => piece.fixed))) return true;
  return constraints.some((constraint) =>
    constraint.grips.some((grip) => 'piece' in grip && ids.includes(obstacleOf(grip.piece))),
  );
}

/**
 * An edit of the places of whole obstacles, with their constraints met. `moved` is the course as if nothing held them;
 * without constraints it is the result.
 */
export function moveObstacles(course: Course, moved: Course, asked: { ids: Keys; name: string }): MoveOutcome {
  const { ids } = asked;
  if (moved === course || !isConstrained(course, ids)) return { kind: 'settled', course: moved, exact: true };
  const wanted = currentLayout(moved);
  const frames = (obstacles: typeof wanted.obstacles) =>
    new Map(obstacles.filter((each) => ids.includes(each.id)).map((each) => [each.id, each.pose] as const));
  const targets = frames(wanted.obstacles);
  const layout = currentLayout(course);
  const before = frames(layout.obstacles);
  // Moved obstacles keep their heading; turned ones are asked for another.
  const isTranslated = [...targets].every(
    ([id, target]) => Math.abs(normalizeAngle(target.angle - (before.get(id)?.angle ?? 0))) < TOUCH,
  );
  const outcome = isTranslated
    ? solveKeepingHeadings(layout, course.arena, targets, course.unit)
    : solveLayout(layout, course.arena, targets, { unit: course.unit });
  if (outcome.kind !== 'settled') return { kind: 'stuck', why: withDisplayNames(outcome.says, survey(course)) };
  if (outcome.layout === layout) return { kind: 'stuck', why: messages.cannotMove(asked.name) };
  const ends = frames(outcome.layout.obstacles);
  return {
    kind: 'settled',
    // The bends go along as far as the pointer asked: no constraint holds them.
    course: replaceLayout(moved, () => ({ ...outcome.layout, ride: wanted.ride })),
    exact: [...targets].every(([id, target]) => isTogether(ends.get(id), target)),
  };
}
