/** The tape as a state machine: its next state for each phase of a pointer. */
import type { Course } from '../../core/course/course.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import type { PointerInput } from '../input.ts';
import { existingKeys } from '../selection/selection.ts';
import { tapeEndAt, tapeReading } from './measuring.ts';
import { EMPTY_TAPE, type TapeEnd, type TapeState } from './tape.ts';

/** A pointer that moved less than this share of the pick radius has tapped. */
const TAP = 1 / 4;

/** A pointer that is down while the tape is on. */
export interface TapePress {
  readonly at: Point;
  /** What the tape was before, in case this is the first pointer of a pinch. */
  readonly before: TapeState;
  /** It set the first end; the second follows when it is dragged, or with the next press. */
  readonly isFirst: boolean;
}

/** The tape after a pointer went down: its first end is set, or its second. */
export function tapeDown(
  tape: TapeState,
  survey: Survey,
  input: PointerInput,
): { readonly tape: TapeState; readonly tapePress: TapePress } {
  const end = tapeEndAt(survey, input);
  const isFirst = tape.from === null || tape.isLaid;
  const next: TapeState = isFirst
    ? { from: end, to: null, isLaid: false }
    : { from: tape.from, to: end, isLaid: false };
  return { tape: next, tapePress: { at: input.at, before: tape, isFirst } };
}

/** The tape after a pointer moved, the same object when nothing changes. Without a press a hovering mouse shows its end. */
export function tapeMoved(tape: TapeState, survey: Survey, input: PointerInput, press: TapePress | null): TapeState {
  if (tape.from === null || tape.isLaid) return tape;
  if (press?.isFirst && tape.to === null && distance(press.at, input.at) < TAP * input.pickRadius) return tape;
  return { ...tape, to: tapeEndAt(survey, input) };
}

/** The tape after the pointer went up: laid when its two ends are apart. */
export function tapeUp(tape: TapeState, survey: Survey): TapeState {
  if (tape.to === null) return tape;
  return tapeReading(survey, tape) === null ? { ...tape, to: null } : { ...tape, isLaid: true };
}

function isThere(end: TapeEnd | null, course: Course): boolean {
  return end?.on !== 'piece' || existingKeys([end.key], course).length > 0;
}

/** The tape on another course: empty when a piece that it was held to is gone. */
export function validTape(tape: TapeState | null, course: Course): TapeState | null {
  if (tape === null) return null;
  return isThere(tape.from, course) && isThere(tape.to, course) ? tape : EMPTY_TAPE;
}
