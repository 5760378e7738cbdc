import { type ClassClock, classClock } from '../../core/ride/class-clock.ts';
import type { Survey } from '../../core/survey.ts';

/** Sizes of class that people ask about: a small one, a usual one, a large one. */
export const WHAT_IF_ENTRIES = [15, 30, 70] as const;

/** The class if so many rode it. */
export function ifEntered({ line, layout, course }: Survey, entries: number): ClassClock {
  const { list: _, ...rest } = course.class;
  return classClock(line, layout.ride, { ...rest, entries });
}

/** The leg that costs the class most: its way and its obstacle together. */
export function costliestLeg({ legs }: ClassClock): number | undefined {
  return legs.toSorted((a, b) => b.class - a.class)[0]?.leg;
}
