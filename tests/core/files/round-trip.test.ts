import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Course } from '../../../src/core/course/course.ts';
import {
  duplicateObstacles,
  eraseByKeys,
  flipObstacles,
  rebuildObstacle,
  rotateByKeys,
  shiftByKeys,
} from '../../../src/core/course/edit-obstacles.ts';
import { reorderLeg } from '../../../src/core/course/edit-ride.ts';
import { branchLayout } from '../../../src/core/course/layouts.ts';
import { readCourse } from '../../../src/core/files/read.ts';
import { writeCourse } from '../../../src/core/files/write.ts';
import { obstacleIds, sampleCourse } from '../course/sample.ts';

const metres = fc.double({ min: -50, max: 50, noNaN: true });
const keys = fc.subarray(['fan-1', 'run-1', 'spoke-1', 'fan-2', 'run-1/pole-2', 'spoke-1/arm-1', 'fan-1/pole-1']);

const edit: fc.Arbitrary<(course: Course) => Course> = fc.oneof(
  fc.tuple(keys, metres, metres).map(
    ([on, dx, dy]) =>
      (course: Course) =>
        shiftByKeys(course, on, dx, dy),
  ),
  fc.tuple(keys, metres).map(
    ([on, by]) =>
      (course: Course) =>
        rotateByKeys(course, on, by, { x: 10, y: 10 }),
  ),
  keys.map((on) => (course: Course) => flipObstacles(course, on)),
  keys.map((on) => (course: Course) => eraseByKeys(course, on.slice(0, 1))),
  keys.map((on) => (course: Course) => duplicateObstacles(course, on.slice(0, 1), 1, 1).course),
  fc.nat(5).map((to) => (course: Course) => {
    const first = course.layouts[0].ride.legs[0];
    return first === undefined || course.layouts.length > 1 ? course : reorderLeg(course, first.id, to);
  }),
  fc.integer({ min: 2, max: 8 }).map((poles) => (course: Course) => {
    if (!obstacleIds(course).includes('run-1')) return course;
    const next = rebuildObstacle(course, 'run-1', { poles });
    return 'why' in next ? course : next;
  }),
  fc.constant((course: Course) => branchLayout(course)),
);

test('whatever is edited can be written, read as the same course, and written again byte for byte', () => {
  fc.assert(
    fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
      const course = edits.reduce((now, change) => change(now), sampleCourse());
      const text = writeCourse(course);
      const reading = readCourse(text);
      expect(reading).toMatchObject({ kind: 'read', repairs: [] });
      if (reading.kind !== 'read') return;
      expect(writeCourse(reading.course)).toBe(text);
      expect(reading.course).toEqual(course);
    }),
  );
});
