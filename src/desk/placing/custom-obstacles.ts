/** Custom obstacles: grouped from pieces that lie there, put on the shelf and placed again. */
import type { Constraint } from '../../core/constraints/constraint.ts';
import { addObstacle, eraseByKeys, freshId } from '../../core/course/edit-obstacles.ts';
import { freeId } from '../../core/course/ids.ts';
import { type PlacedPiece, placedObstacle } from '../../core/course/placed.ts';
import { resolvedConstraints } from '../../core/course/resolved-constraints.ts';
import { free } from '../../core/obstacles/custom/free.ts';
import { freeObstacle } from '../../core/obstacles/custom/grouped.ts';
import type { Obstacle } from '../../core/obstacles/obstacle.ts';
import type { Point } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import { labels, messages } from '../../words/desk.ts';
import type { DeskState } from '../desk.ts';
import type { Plan } from '../plan.ts';
import { chosenObstacles, chosenPieces, type Keys } from '../selection/selection.ts';
import { placeBuiltPlan } from './add-obstacle.ts';

/** One obstacle of these pieces as they lie, with the constraints among them. */
function gatheredObstacle(survey: Survey, pieces: readonly PlacedPiece[], as: { id: string; name: string }): Obstacle {
  const made = freeObstacle(
    as.id,
    pieces.map(({ piece, pose }) => ({ piece, pose })),
    as.name,
  );
  // The pieces are named anew in the order given.
  const names = new Map(pieces.map((piece, i) => [piece.key, made.pieces[i]?.id ?? piece.piece.id]));
  const constraints: Constraint[] = [];
  for (const { constraint, grips } of resolvedConstraints(survey.layout)) {
    const among = grips.flatMap((grip) => {
      const piece = 'piece' in grip ? names.get(grip.piece) : undefined;
      return piece === undefined ? [] : [{ ...grip, piece }];
    });
    if (among.length < grips.length) continue;
    const id = freeId(
      constraint.kind,
      constraints.map((each) => each.id),
    );
    constraints.push({ ...constraint, id, grips: among });
  }
  return { ...made, constraints };
}

/** Makes one obstacle of all that is chosen, where it lies. */
export function gatherPlan({ course, survey, chosen }: DeskState): Plan {
  const pieces = chosenPieces(survey, chosen);
  if (pieces.length === 0) return { refusal: messages.choseNothing() };
  const id = freshId(course, free.id);
  const made = gatheredObstacle(survey, pieces, { id, name: messages.ownName() });
  const rest = eraseByKeys(
    course,
    pieces.map((piece) => piece.key),
  );
  return {
    course: addObstacle(rest, made),
    chosen: [id],
    label: labels.gather(),
    said: messages.gathered(pieces.length),
  };
}

/** What is chosen as one obstacle for the shelf; null when nothing is. */
export function shelfObstacle({ survey, chosen }: { readonly survey: Survey; readonly chosen: Keys }): Obstacle | null {
  const pieces = chosenPieces(survey, chosen);
  if (pieces.length === 0) return null;
  const [whole, more] = chosenObstacles(survey, chosen);
  const isAlone = whole !== undefined && more === undefined && whole.pieces.length === pieces.length;
  return isAlone ? whole.obstacle : gatheredObstacle(survey, pieces, { id: free.id, name: messages.ownName() });
}

/** Places an obstacle that somebody kept, as it was kept. */
export function placeFromShelfPlan(state: DeskState, stored: Obstacle, at: Point): Plan {
  const id = freshId(state.course, stored.kind);
  const { pieces: lying } = placedObstacle(stored);
  const loose = stored.pieces.map(({ fixed: _, ...piece }) => piece);
  if (lying.length === 0) return { refusal: messages.noSuchKind(stored.kind) };
  return placeBuiltPlan(state, { ...stored, id, pieces: loose, pose: { ...stored.pose, x: at.x, y: at.y } });
}
