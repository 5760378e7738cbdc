/** The tape as a small machine: what the phases of a finger make of it. */
import type { Course } from '../../core/course/course.ts';
import { distance, type Point } from '../../core/plane/point.ts';
import type { Survey } from '../../core/survey.ts';
import type { Touch } from '../desk.ts';
import { stillThere } from '../selection/selection.ts';
import { IN_HAND, type Measuring, measuredBy, type TapeEnd, tapeEndAt } from './measuring.ts';

/** A hand that moved less than this part of the reach has tapped. */
const TAP = 1 / 4;

/** A finger that is down with the tape in the hand. */
export interface TapePress {
  readonly at: Point;
  /** What the tape was before, should the finger turn out to be half a pinch. */
  readonly before: Measuring;
  /** It set the first end; the second follows when it is dragged, or with the next press. */
  readonly isFirst: boolean;
}

export function tapeDown(
  measuring: Measuring,
  survey: Survey,
  touch: Touch,
): { readonly measuring: Measuring; readonly press: TapePress } {
  const end = tapeEndAt(survey, touch);
  const isFirst = measuring.from === null || measuring.isLaid;
  const next: Measuring = isFirst
    ? { from: end, to: null, isLaid: false }
    : { from: measuring.from, to: end, isLaid: false };
  return { measuring: next, press: { at: touch.at, before: measuring, isFirst } };
}

/** The same when nothing changes. Without a press a mouse hovers and shows where the tape would end. */
export function tapeMoved(measuring: Measuring, survey: Survey, touch: Touch, press: TapePress | null): Measuring {
  if (measuring.from === null || measuring.isLaid) return measuring;
  if (press?.isFirst && measuring.to === null && distance(press.at, touch.at) < TAP * touch.reach) return measuring;
  return { ...measuring, to: tapeEndAt(survey, touch) };
}

/** The tape once the finger is up: laid when it has two ends that are apart. */
export function tapeUp(measuring: Measuring, survey: Survey): Measuring {
  if (measuring.to === null) return measuring;
  return measuredBy(survey, measuring) === null ? { ...measuring, to: null } : { ...measuring, isLaid: true };
}

function isThere(end: TapeEnd | null, course: Course): boolean {
  return end?.on !== 'piece' || stillThere([end.key], course).length > 0;
}

/** The tape with what it was held to; wound up when one of that is gone. */
export function tapeStill(measuring: Measuring | null, course: Course): Measuring | null {
  if (measuring === null) return null;
  return isThere(measuring.from, course) && isThere(measuring.to, course) ? measuring : IN_HAND;
}
