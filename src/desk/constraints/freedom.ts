import { type ConstraintStatus, constraintStatus } from '../../core/course/constraint-status.ts';
import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { placedPieces, resolvedConstraints } from '../../core/course/resolved-constraints.ts';
import { solveLayout } from '../../core/course/solve-layout.ts';
import { normalizeAngle } from '../../core/plane/pose.ts';
import { survey } from '../../core/survey.ts';
import { words } from '../desk-words.ts';
import { isLong } from './constraint-candidates.ts';
import { clashRetold } from './display-names.ts';

/** How far an obstacle is pushed to see whether it gives: metres and radians. */
const PUSH = 0.01;
/** It gives when it goes along by more than this part of the push. */
const GIVES = 1 / 4;

const known = new WeakMap<Course, ConstraintStatus>();

/** How firmly the layout of a course holds together; worked out when somebody asks, and kept. */
export function standingOf(course: Course): ConstraintStatus {
  const before = known.get(course);
  if (before !== undefined) return before;
  const found = constraintStatus(currentLayout(course), course.arena, { unit: course.unit });
  const made = { ...found, clashes: found.conflicts.map((clash) => clashRetold(clash, survey(course))) };
  known.set(course, made);
  return made;
}

const said = new WeakMap<Course, Map<string, string>>();

/** What an obstacle can still do, in plain words: "Can still slide and turn.", "Held firmly." */
export function freedomWords(course: Course, id: string): string {
  const before = said.get(course) ?? new Map<string, string>();
  said.set(course, before);
  const made = before.get(id) ?? freedomNow(course, id);
  before.set(id, made);
  return made;
}

/** Constraints to which it is all one how a small thing is turned. */
const BLIND = new Set(['apart', 'beside', 'marker-clear', 'on-line', 'on-arc']);

/** How many small things of an obstacle may turn where they stand, which nobody sees. */
function idleTurns(layout: Layout, id: string): number {
  const holdings = resolvedConstraints(layout).filter((each) => each.owner === id);
  const pieces = placedPieces(layout);
  return [...pieces.values()].filter(
    (piece) =>
      piece.obstacle === id &&
      !isLong(piece) &&
      holdings
        .filter(({ grips }) => grips.some((grip) => 'piece' in grip && grip.piece === piece.key))
        .every(({ kind }) => BLIND.has(kind.id)),
  ).length;
}

function freedomNow(course: Course, id: string): string {
  const layout = currentLayout(course);
  const obstacle = layout.obstacles.find((each) => each.id === id);
  const freedom = standingOf(course).freedoms.find((each) => each.obstacle === id);
  if (obstacle === undefined || freedom === undefined) return '';
  const { pose } = obstacle;
  const pushed = (dx: number, dy: number, turn: number) => {
    const wish = { x: pose.x + dx, y: pose.y + dy, angle: normalizeAngle(pose.angle + turn) };
    const outcome = solveLayout(layout, course.arena, new Map([[id, wish]]), { unit: course.unit });
    const end = outcome.kind === 'settled' ? outcome.layout.obstacles.find((each) => each.id === id)?.pose : undefined;
    if (end === undefined) return false;
    const went =
      turn === 0 ? (end.x - pose.x) * dx + (end.y - pose.y) * dy : normalizeAngle(end.angle - pose.angle) * turn;
    return went > GIVES * PUSH * PUSH;
  };
  if (freedom.ways === 0) return words.heldFirmly();
  return words.freedom({
    along: pushed(PUSH, 0, 0),
    across: pushed(0, PUSH, 0),
    turns: pushed(0, 0, PUSH),
    inside: freedom.inside > idleTurns(layout, id),
  });
}
