/** The tape as a state machine: its next state for each phase of a pointer. */
import { distance } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import type { PointerInput } from '../input.ts';
import { tapeEndAt, tapeReading } from './measuring.ts';
import type { TapePress, TapeState } from './tape.ts';

/** A pointer that moved less than this share of the pick radius has tapped. */
const TAP = 1 / 4;

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
