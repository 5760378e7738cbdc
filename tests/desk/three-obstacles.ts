import { blankCourse } from '../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../src/core/course/course.ts';
import { addObstacle } from '../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../src/core/course/edit-ride.ts';
import { buildObstacle } from '../../src/core/obstacles/build.ts';
import type { Values } from '../../src/core/pieces/params.ts';
import { pose } from '../../src/core/plane/pose.ts';

/** A course with one more obstacle in it, its frame at a place and a heading. */
export function withObstacle(
  course: Course,
  id: string,
  at: { x: number; y: number; angle?: number; values?: Values },
): Course {
  const kind = id.replace(/-\d+$/, '');
  const built = buildObstacle(id, kind, at.values ?? {}, pose(at.x, at.y, at.angle ?? 0));
  if ('why' in built) throw new Error(`${id}: ${built.why}`);
  return addObstacle(course, built);
}

/**
 * An arena of 200 × 100 ft (60.96 × 30.48 m) with three obstacles, ridden in this order: a run at (15, 9),
 * a fan at (30, 20), a spoke at (46, 9). Every way is chosen, so that nothing changes but what a test does.
 */
export function threeObstacles(): Course {
  const open = threeOpenObstacles();
  const { legs } = currentLayout(open).ride;
  return legs.reduce((course, { id, passage }) => changeLeg(course, id, { passage }), open);
}

/** The same with every way open, and none taken yet. */
export function threeOpenObstacles(): Course {
  const run = withObstacle(blankCourse({ title: 'Three obstacles' }), 'run-1', { x: 15, y: 9 });
  const fan = withObstacle(run, 'fan-1', { x: 30, y: 20 });
  return withObstacle(fan, 'spoke-1', { x: 46, y: 9 });
}
