import type { Finding } from '../../checks/check.ts';
import { findingsOf } from '../../checks/checks.ts';
import type { Course } from '../../course/course.ts';
import { type Survey, survey } from '../../survey.ts';
import { type Adjustment, type AdjustOptions, adjustReadings, type GroundReading } from './adjust.ts';
import { asBuiltCourse, courseWithPiecesAt } from './as-built-course.ts';
import { type AsBuiltGap, asBuiltGaps } from './as-built-gaps.ts';
import { type Mends, mendsOf } from './mends.ts';
import type { MoveNames } from './mends-words.ts';

/** What lies on the ground, by readings of a tape, and what to do about it. */
export interface AsBuilt {
  readonly adjustment: Adjustment;
  /** With the layout as built as one more, shown: to be kept. */
  readonly course: Course;
  /** Of the planned layout with its pieces where they lie: what holds them is as it was, so that checks can say what is not met. */
  readonly survey: Survey;
  readonly gaps: readonly AsBuiltGap[];
  readonly findings: readonly Finding[];
  readonly mends: Mends;
}

export interface AsBuiltOptions extends AdjustOptions {
  /** Letters of the ends of long pieces, by key. */
  readonly letters?: MoveNames['letters'];
}

/** The course as it lies by some readings: poses, gaps, findings and moves that mend. Throws as `adjustReadings` does. */
export function asBuiltOf(planned: Survey, readings: readonly GroundReading[], options: AsBuiltOptions = {}): AsBuilt {
  const adjustment = adjustReadings(planned, readings, options);
  const poses = new Map([...adjustment.pieces].map(([key, { pose }]) => [key, pose]));
  const built = survey(courseWithPiecesAt(planned.course, poses));
  const gaps = asBuiltGaps(planned, built, adjustment);
  const { letters } = options;
  const held = adjustment.groups.map(({ pieces }) => pieces[0]);
  const movable = new Set(adjustment.pieces.keys());
  const mends = mendsOf(planned, built, gaps, { held, movable, ...(letters === undefined ? {} : { letters }) });
  const course = asBuiltCourse(planned.course, poses);
  return { adjustment, course, survey: built, gaps, findings: findingsOf(built), mends };
}
