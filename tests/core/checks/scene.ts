/** Small courses for the tests of checks: an arena of 200 × 100 ft, the default rule book, obstacles in the order of the go. */

import type { Finding } from '../../../src/core/checks/check.ts';
import { findingsOf } from '../../../src/core/checks/checks.ts';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course, Leg } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { FOOT } from '../../../src/core/measure/quantity.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import { survey } from '../../../src/core/survey.ts';

/** One obstacle: where its frame lies in feet, which way in degrees, and how it is ridden. */
export interface Thing {
  readonly kind: string;
  readonly values?: Values;
  readonly at: readonly [number, number, number?];
  readonly leg?: Partial<Leg>;
}

export const BLANK: Course = blankCourse();

/** The course with the things added; their ids are kind-1, kind-2 … */
export function scene(things: readonly Thing[], blank: Course = BLANK): Course {
  return things.reduce((course, { kind, values = {}, at: [x, y, degrees = 0], leg }) => {
    const id = `${kind}-${course.layouts[0].obstacles.filter((each) => each.kind === kind).length + 1}`;
    const obstacle = buildObstacle(id, kind, values, { x: x * FOOT, y: y * FOOT, angle: (degrees * Math.PI) / 180 });
    if ('why' in obstacle) throw new Error(obstacle.why);
    const next = addObstacle(course, obstacle);
    const last = next.layouts[0].ride.legs.at(-1);
    return leg === undefined || last === undefined ? next : changeLeg(next, last.id, leg);
  }, blank);
}

/** The course judged by another book, or with house rules. */
export function judged(course: Course, id: string, house: Course['rulebook']['house'] = {}): Course {
  return { ...course, rulebook: { id, house } };
}

/** The course with other values on some pieces, as the tape sets them. */
export function retaped(course: Course, keys: readonly string[], values: Values): Course {
  return replaceLayout(course, (layout) => ({
    ...layout,
    obstacles: layout.obstacles.map((obstacle) => ({
      ...obstacle,
      pieces: obstacle.pieces.map((piece) =>
        keys.includes(`${obstacle.id}/${piece.id}`) ? { ...piece, values: { ...piece.values, ...values } } : piece,
      ),
    })),
  }));
}

export function findings(course: Course): readonly Finding[] {
  return findingsOf(survey(course));
}

/** What one check says. */
export function saidBy(course: Course, check: string): readonly Finding[] {
  return findings(course).filter((finding) => finding.check === check);
}
