import type { PlacedObstacle } from '../../../core/course/placed.ts';
import { memoizeByIdentity } from '../../../core/memo/by-identity.ts';
import type { Mark } from '../../../core/plane/mark.ts';
import type { Survey } from '../../../core/survey.ts';
import type { DrawContext } from './draw-context.ts';
import { paintMarks } from './marks.ts';
import { movedMarks } from './moved-marks.ts';

/** All marks of an obstacle on the ground, decks first; cached by identity. */
const marksOf = memoizeByIdentity((placed: PlacedObstacle): readonly Mark[] => {
  const decksFirst = [...placed.pieces].sort(
    (a, b) => Number(b.figure.stands === 'deck') - Number(a.figure.stands === 'deck'),
  );
  const marks = decksFirst.flatMap((piece) => movedMarks(piece.figure.marks, piece.pose));
  return marks;
});

export function paintObstacles(
  context: CanvasRenderingContext2D,
  { obstacles }: Pick<Survey, 'obstacles'>,
  eye: DrawContext,
): void {
  for (const obstacle of obstacles) paintMarks(context, marksOf(obstacle), eye);
}
