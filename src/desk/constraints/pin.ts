import { type Draft, produce } from 'immer';
import type { Layout } from '../../core/course/course.ts';
import { replaceLayout } from '../../core/course/layouts.ts';
import { pieceKey } from '../../core/course/placed.ts';
import { labels, messages } from '../../words/desk.ts';
import type { DeskState } from '../desk.ts';
import { namesOf } from '../names.ts';
import type { Plan } from '../plan.ts';
import { chosenPieces } from '../selection/selection.ts';

/** Pins the pieces that are chosen, by themselves or with their obstacle; frees them when all are pinned. */
export function pinPlan({ course, survey, chosen }: DeskState): Plan {
  const pieces = chosenPieces(survey, chosen);
  if (pieces.length === 0) return { refusal: messages.choseNothing() };
  const isUnpinning = pieces.every((piece) => piece.piece.fixed);
  const keys = new Set(pieces.map((piece) => piece.key));
  const name = namesOf(survey, chosen);
  const next = replaceLayout(
    course,
    produce(({ obstacles }: Draft<Layout>) => {
      for (const obstacle of obstacles) {
        for (const piece of obstacle.pieces) {
          if (!keys.has(pieceKey(obstacle.id, piece.id))) continue;
          if (isUnpinning) delete piece.fixed;
          else piece.fixed = true;
        }
      }
    }),
  );
  const label = isUnpinning ? labels.unpin(name) : labels.pin(name);
  return { course: next, chosen, label, said: isUnpinning ? messages.unpinned(name) : messages.pinned(name) };
}
