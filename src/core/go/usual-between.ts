import { USUAL_REST } from '../change/day-problem.ts';
import { USUAL_CLASS } from '../ride/class-clock.ts';
import type { Survey } from '../survey.ts';

/**
 * Goes of others between two goes of one rider that leave the rest which the day gives a rider between two classes: its own,
 * else a quarter of an hour.
 */
export function usualBetween({ course, classClock }: Survey): number {
  const { changeover = USUAL_CLASS.changeover } = course.class;
  const rest = course.day?.restBetween ?? USUAL_REST;
  const turn = classClock.go + changeover;
  return turn > 0 ? Math.max(0, Math.ceil((rest - changeover) / turn)) : 0;
}
