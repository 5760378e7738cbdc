import { type Draft, produce } from 'immer';
import { type Course, currentLayout, type Layout } from '../../core/course/course.ts';
import { obstacleOf, pieceOf } from '../../core/course/ids.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import { pinnedPieces } from '../../core/course/resolved-constraints.ts';
import type { LayoutOutcome } from '../../core/course/solve-layout.ts';
import type { Survey } from '../../core/survey.ts';
import type { Keys } from '../selection/selection.ts';
import { solveKeepingHeadings } from './solve-steady.ts';

/** A course in which every constraint is met, or the conflict that prevents it. */
export type CourseOutcome =
  | { readonly kind: 'solved'; readonly course: Course }
  | Exclude<LayoutOutcome, { kind: 'settled' }>;

/** When the go comes to a piece: by its obstacle's number, then by its place in the passage. */
function goOrderOf(survey: Survey, key: string): readonly [number, number] {
  const leg = survey.layout.ride.legs.findIndex((each) => each.obstacle === obstacleOf(key));
  const obstacle = survey.layout.obstacles.find((each) => each.id === obstacleOf(key));
  const passage = obstacle?.passages.find((each) => each.id === survey.layout.ride.legs[leg]?.passage);
  const station = passage?.stations.findIndex((each) => each.kind !== 'turn' && each.piece === pieceOf(key)) ?? -1;
  const listed = obstacle?.pieces.findIndex((each) => each.id === pieceOf(key)) ?? 0;
  return [leg < 0 ? Number.POSITIVE_INFINITY : leg, station < 0 ? 1000 + listed : station];
}

/**
 * Of the pieces that a constraint grips, the one that stays when its value changes: none when one of them is fixed (it
 * stays anyway) or there is only one, otherwise the one that the go comes to first.
 */
export function stayingPiece(survey: Survey, pieces: Keys): string | null {
  const pinned = pinnedPieces(survey.layout);
  const keys = [...new Set(pieces)];
  if (keys.length < 2 || keys.some((key) => pinned.has(key))) return null;
  const [first] = keys
    .map((key) => ({ key, turn: goOrderOf(survey, key) }))
    .sort((a, b) => a.turn[0] - b.turn[0] || a.turn[1] - b.turn[1]);
  return first?.key ?? null;
}

function setPinned(layout: Layout, key: string, isPinned: boolean): Layout {
  return produce(layout, ({ obstacles }: Draft<Layout>) => {
    const piece = obstacles
      .find((each) => each.id === obstacleOf(key))
      ?.pieces.find((each) => each.id === pieceOf(key));
    if (piece === undefined) return;
    if (isPinned) piece.fixed = true;
    else delete piece.fixed;
  });
}

/**
 * Solves all constraints, with the `staying` piece left where it is when that is possible. On a conflict nothing moves.
 */
export function solveCourse(course: Course, staying: string | null): CourseOutcome {
  const layout = currentLayout(course);
  const { arena, unit } = course;
  if (staying !== null) {
    const anchored = solveKeepingHeadings(setPinned(layout, staying, true), arena, new Map(), unit);
    if (anchored.kind === 'settled') {
      return { kind: 'solved', course: replaceLayout(course, () => setPinned(anchored.layout, staying, false)) };
    }
  }
  const outcome = solveKeepingHeadings(layout, arena, new Map(), unit);
  if (outcome.kind !== 'settled') return outcome;
  return { kind: 'solved', course: replaceLayout(course, () => outcome.layout) };
}
