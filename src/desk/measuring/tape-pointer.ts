/** The tape as a small machine: what the phases of a finger make of it. */
import type { Course } from '../../core/course/course.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import type { PointerInput } from '../desk.ts';
import { existingKeys } from '../selection/selection.ts';
import { EMPTY_TAPE, type TapeEnd, type TapeState, tapeEndAt, tapeReading } from './measuring.ts';

/** A hand that moved less than this part of the reach has tapped. */
const TAP = 1 / 4;

/** A finger that is down with the tape in the hand. */
export interface TapePress {
  readonly at: Point;
  /** What the tape was before, should the finger turn out to be half a pinch. */
  readonly before: TapeState;
  /** It set the first end; the second follows when it is dragged, or with the next press. */
  readonly isFirst: boolean;
}

export function tapeDown(
  measuring: TapeState,
  survey: Survey,
  input: PointerInput,
): { readonly measuring: TapeState; readonly press: TapePress } {
  const end = tapeEndAt(survey, input);
  const isFirst = measuring.from === null || measuring.isLaid;
  const next: TapeState = isFirst
    ? { from: end, to: null, isLaid: false }
    : { from: measuring.from, to: end, isLaid: false };
  return { measuring: next, press: { at: input.at, before: measuring, isFirst } };
}

/** The same when nothing changes. Without a press a mouse hovers and shows where the tape would end. */
export function tapeMoved(
  measuring: TapeState,
  survey: Survey,
  input: PointerInput,
  press: TapePress | null,
): TapeState {
  if (measuring.from === null || measuring.isLaid) return measuring;
  if (press?.isFirst && measuring.to === null && distance(press.at, input.at) < TAP * input.pickRadius)
    return measuring;
  return { ...measuring, to: tapeEndAt(survey, input) };
}

/** The tape once the finger is up: laid when it has two ends that are apart. */
export function tapeUp(measuring: TapeState, survey: Survey): TapeState {
  if (measuring.to === null) return measuring;
  return tapeReading(survey, measuring) === null ? { ...measuring, to: null } : { ...measuring, isLaid: true };
}

function isThere(end: TapeEnd | null, course: Course): boolean {
  return end?.on !== 'piece' || existingKeys([end.key], course).length > 0;
}

/** The tape with what it was held to; wound up when one of that is gone. */
export function validTape(measuring: TapeState | null, course: Course): TapeState | null {
  if (measuring === null) return null;
  return isThere(measuring.from, course) && isThere(measuring.to, course) ? measuring : EMPTY_TAPE;
}
