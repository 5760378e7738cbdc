import type { Course } from '../core/course/course.ts';
import type { Checker, Desk } from './desk.ts';
import { createEarlyDesk } from './early-desk.ts';
import { INSTRUMENTS } from './measuring/all-instruments.ts';

/** A desk on which a course is open, with its instruments. Without a checker it finds nothing until it is given one. */
export function createDesk(first: Course, checker: Checker | null = null): Desk {
  const desk = createEarlyDesk(first, checker);
  desk.takeInstruments(INSTRUMENTS);
  return desk;
}
