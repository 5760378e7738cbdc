import { memoizeByIdentity } from '../memo/by-identity.ts';
import type { Survey } from '../survey.ts';
import { DIFFICULTY_PARTS, type DifficultyPart } from './difficulty-parts.ts';

/** What one part of the difficulty comes to. */
export interface DifficultyShare {
  readonly id: string;
  readonly title: string;
  /** How much of it there is, in the part's `unit`. */
  readonly amount: number;
  readonly unit: DifficultyPart['unit'];
  readonly points: number;
  readonly because: string;
  /** Where the points are from. */
  readonly source: DifficultyPart['source'];
}

/** How much a layout asks of horse and rider, and of what it is made up. */
export interface Difficulty {
  readonly total: number;
  /** All parts, those with nothing as well. */
  readonly parts: readonly DifficultyShare[];
}

/**
 * The difficulty of a go: named amounts times points. The points are estimates of this program and open to see; no source
 * weighs them. What lies behind the last obstacle is left out, so that an obstacle more at the end never makes a go easier.
 */
export const difficulty = memoizeByIdentity((survey: Survey): Difficulty => {
  const parts = DIFFICULTY_PARTS.map(({ id, title, unit, each, because, source, amount }): DifficultyShare => {
    const found = amount(survey);
    return { id, title, unit, amount: found, points: found * each, because, source };
  });
  return { total: parts.reduce((sum, { points }) => sum + points, 0), parts };
});
