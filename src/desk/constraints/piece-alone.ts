/** Just one piece: it goes where it is asked to, and what held it to others gives way. */
import { isMeasurable } from '../../core/constraints/residuals.ts';
import { applyResolution } from '../../core/course/conflict.ts';
import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { placeAt } from '../../core/course/edit-obstacles.ts';
import { obstacleOf } from '../../core/course/ids.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import { pieceKey, placedObstacle } from '../../core/course/placed.ts';
import {
  grippedPoses,
  isDriving,
  placedPieces,
  printMeasure,
  type ResolvedConstraint,
  resolvedConstraints,
} from '../../core/course/resolved-constraints.ts';
import { TOUCH } from '../../core/plane/point.ts';
import type { Pose } from '../../core/plane/pose.ts';
import { survey as surveyOf } from '../../core/survey.ts';
import { handWords } from '../../words/hand.ts';
import type { MoveOutcome } from './constrained-move.ts';
import { editConstraints, isSatisfied } from './constraint-edits.ts';
import { constraintWords } from './kept-words.ts';

function holds(holding: ResolvedConstraint, key: string): boolean {
  return isDriving(holding) && holding.grips.some((grip) => 'piece' in grip && grip.piece === key);
}

/** The pieces that constraints hold to a piece, one to the next, without those that are fixed. */
export function piecesHeldTo(layout: Layout, key: string): ReadonlySet<string> {
  const fixed = new Set(
    layout.obstacles.flatMap(({ id, pieces }) =>
      pieces.filter((piece) => piece.fixed).map((piece) => pieceKey(id, piece.id)),
    ),
  );
  const driving = resolvedConstraints(layout).filter(isDriving);
  const found = new Set([key]);
  for (const each of found) {
    for (const { grips } of driving) {
      const keys = grips.flatMap((grip) => ('piece' in grip ? [grip.piece] : []));
      if (!keys.includes(each)) continue;
      for (const other of keys) if (!fixed.has(other)) found.add(other);
    }
  }
  found.delete(key);
  return found;
}

/** Keys of the pieces that lie elsewhere on the ground than before. */
export function piecesMoved(before: Course, after: Course): ReadonlySet<string> {
  const then = placedPieces(currentLayout(before));
  const moved = new Set<string>();
  for (const [key, { pose }] of placedPieces(currentLayout(after))) {
    const was = then.get(key)?.pose;
    if (was !== undefined && (Math.hypot(was.x - pose.x, was.y - pose.y) > TOUCH || was.angle !== pose.angle)) {
      moved.add(key);
    }
  }
  return moved;
}

/** "Moves all 5 poles: their gaps are kept"; null when nothing but the piece moves. */
export function alongWords(course: Course, key: string, others: ReadonlySet<string>): string | null {
  if (others.size === 0) return null;
  const own = currentLayout(course).obstacles.find(({ id }) => id === obstacleOf(key));
  const pieces = own === undefined ? [] : placedObstacle(own).pieces;
  const moved = pieces.filter((piece) => piece.key === key || others.has(piece.key));
  const areAll = moved.length === pieces.length && others.size === moved.length - 1;
  const arePoles = moved.every(({ piece }) => piece.kind === 'pole');
  return handWords.movesAlong(others.size + 1, { areAll, arePoles });
}

/**
 * Puts one piece at a pose on the ground and leaves all others where they are. A measure that held it to another piece
 * is kept at its new value, as an exception; what has no number, or cannot be measured there, is dropped.
 */
export function movePieceAlone(course: Course, key: string, pose: Pose): Extract<MoveOutcome, { kind: 'settled' }> {
  let next = placeAt(course, key, pose);
  const gaveWay: string[] = [];
  for (const holding of resolvedConstraints(currentLayout(course)).filter((each) => holds(each, key))) {
    const { kind, constraint, grips } = holding;
    const { hold, side = 1 } = constraint;
    const draft = { kind: kind.id, grips, side, ...(hold === undefined ? {} : { hold }) };
    if (isSatisfied(next, draft)) continue;
    const held = grippedPoses({ grips }, next.arena, placedPieces(currentLayout(next)));
    const now = held !== undefined && isMeasurable(kind, held, side) ? kind.measure(held, side) : Number.NaN;
    const { name } = constraintWords(surveyOf(course), [holding], '');
    if (kind.unit !== 'none' && hold !== undefined && now >= 0 && isSatisfied(next, { ...draft, hold: now })) {
      next = editConstraints(next, [holding.key], (each) => {
        each.hold = now;
      });
      const print = (value: number) => printMeasure(kind, value, course.unit);
      gaveWay.push(handWords.nowMeasures(name, print(now), print(hold)));
    } else {
      next = replaceLayout(next, (layout) => applyResolution(layout, { does: 'drop', key: holding.key }));
      gaveWay.push(handWords.noLongerKept(name));
    }
  }
  return { kind: 'settled', course: next, exact: true, gaveWay };
}
