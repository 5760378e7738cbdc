import type { Finding } from '../../checks/check.ts';
import { findingsOf } from '../../checks/checks.ts';
import { nearestAllowed } from '../../checks/rulebooks/band.ts';
import type { Course } from '../../course/course.ts';
import type { LengthUnit, Metres } from '../../measure/quantity.ts';
import type { Pose } from '../../plane/pose.ts';
import { type Survey, survey } from '../../survey.ts';
import { TAPE_STEP } from '../plan/rounded-build.ts';
import { pieceNamed } from './adjust-equations.ts';
import { courseWithPiecesAt } from './as-built-course.ts';
import { outsideBand } from './as-built-gaps.ts';
import type { MendRow } from './mends-rows.ts';
import type { PoleMove } from './mends-words.ts';

/** A pole after an end of it was moved across, the other end lying still; or after the whole of it was. */
function movedPole({ x, y, angle }: Pose, length: Metres, { end, by }: PoleMove): Pose {
  if (end === undefined) return { x: x - by * Math.sin(angle), y: y + by * Math.cos(angle), angle };
  const way = end === 1 ? 1 : -1;
  const turned = angle + (way * by) / length;
  const half = (way * length) / 2;
  // From the middle to the end that lies still, and back along the new direction.
  return {
    x: x - half * Math.cos(angle) + half * Math.cos(turned),
    y: y - half * Math.sin(angle) + half * Math.sin(turned),
    angle: turned,
  };
}

/** Where the moves put their poles, by key, one after the other. */
export function posesAfter(of: Survey, moves: readonly PoleMove[]): ReadonlyMap<string, Pose> {
  const poses = new Map<string, Pose>();
  for (const move of moves) {
    const { pose, figure } = pieceNamed(of, move.key);
    poses.set(move.key, movedPole(poses.get(move.key) ?? pose, figure.length, move));
  }
  return poses;
}

/** What becomes of a course by some moves. */
export interface MendTrial {
  readonly course: Course;
  /** Of the rows, in their order; undefined where one cannot be measured any more. */
  readonly values: readonly (Metres | undefined)[];
  readonly isInside: boolean;
  /** What the checks find that they did not find before: a must or a should. */
  readonly fault?: Finding;
}

function idsOf({ id, members = [] }: Finding): readonly string[] {
  return [id, ...members];
}

/** Whether what was measured misses its band by less than a tape shows. */
function isOnTheEdge({ measured, allowed }: Finding, unit: LengthUnit): boolean {
  if (measured === undefined || allowed === undefined) return false;
  const [nearest = measured] = nearestAllowed(allowed, measured);
  return Math.abs(nearest - measured) <= TAPE_STEP[unit];
}

/** The first finding, a must or a should, of which nothing was found before, and which a tape would show. */
function newFault(before: Survey, after: Survey): Finding | undefined {
  const known = new Set(findingsOf(before).flatMap(idsOf));
  return findingsOf(after).find(
    (each) =>
      each.weight !== 'note' && !idsOf(each).some((id) => known.has(id)) && !isOnTheEdge(each, after.course.unit),
  );
}

/** Tries moves on a copy of the course: everything is measured and checked anew. */
export function triedMoves(before: Survey, rows: readonly MendRow[], moves: readonly PoleMove[]): MendTrial {
  const course = courseWithPiecesAt(before.course, posesAfter(before, moves));
  const after = survey(course);
  const values = rows.map((row) => row.measured(after));
  const isInside = rows.every(({ band }, i) => {
    const value = values[i];
    return value !== undefined && outsideBand(band, value, course.unit) === 0;
  });
  const fault = isInside ? newFault(before, after) : undefined;
  return { course, values, isInside, ...(fault === undefined ? {} : { fault }) };
}
