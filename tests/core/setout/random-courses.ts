/** Courses of obstacles of random kinds anywhere in the arena, with the sizes that are usual: they need not ride, only lie. */
import fc from 'fast-check';
import { blankCourse } from '../../../src/core/course/blank.ts';
import type { Course } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { OBSTACLE_KINDS } from '../../../src/core/obstacles/obstacles.ts';
import { build } from '../course/sample.ts';

/** Of every shipped kind that is built from values: an own obstacle has no pieces until somebody lays them. */
const KINDS = OBSTACLE_KINDS.filter(({ id }) => build('it', id, { x: 0, y: 0, angle: 0 }).pieces.length > 0);

const PLACE = fc.record({
  kind: fc.constantFrom(...KINDS),
  x: fc.double({ min: 12, max: 60, noNaN: true }),
  y: fc.double({ min: 12, max: 24, noNaN: true }),
  angle: fc.oneof(fc.constantFrom(0, Math.PI / 2, Math.PI / 4), fc.double({ min: -3, max: 3, noNaN: true })),
});

/** One to three obstacles. */
export const randomCourse: fc.Arbitrary<Course> = fc
  .array(PLACE, { minLength: 1, maxLength: 3 })
  .map((places) =>
    places.reduce(
      (course, { kind, x, y, angle }, i) => addObstacle(course, build(`thing-${i + 1}`, kind.id, { x, y, angle })),
      blankCourse(),
    ),
  );
