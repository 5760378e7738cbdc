/** A small course for the tests of this module: a fan, a run and a spoke, ridden in this order, with one constraint. */
import { blankCourse } from '../../../src/core/course/blank.ts';
import { type Course, currentLayout } from '../../../src/core/course/course.ts';
import { addObstacle } from '../../../src/core/course/edit-obstacles.ts';
import { changeLeg } from '../../../src/core/course/edit-ride.ts';
import { replaceLayout } from '../../../src/core/course/layouts.ts';
import { buildObstacle } from '../../../src/core/obstacles/build.ts';
import type { Obstacle } from '../../../src/core/obstacles/obstacle.ts';
import type { Values } from '../../../src/core/pieces/params.ts';
import type { Pose } from '../../../src/core/plane/pose.ts';

export function build(id: string, kind: string, pose: Pose, values: Values = {}): Obstacle {
  const built = buildObstacle(id, kind, values, pose);
  if ('why' in built) throw new Error(built.why);
  return built;
}

export function sampleCourse(): Course {
  let course = blankCourse({ title: 'Practice' });
  course = addObstacle(course, build('fan-1', 'fan', { x: 15, y: 10, angle: 0.5 }));
  course = addObstacle(course, build('run-1', 'run', { x: 30, y: 20, angle: 0 }));
  course = addObstacle(course, build('spoke-1', 'spoke', { x: 45, y: 12, angle: -1 }));
  course = changeLeg(course, 'leg-2', { bends: [{ x: 22, y: 16 }], lead: 'left', words: 'Jog over' });
  return replaceLayout(course, (layout) => ({
    ...layout,
    constraints: [
      {
        id: 'gap-1',
        kind: 'gap',
        grips: [
          { piece: 'fan-1/pole-1', at: 0.5 },
          { piece: 'run-1/pole-1', at: 0.5 },
        ],
        hold: 15,
        side: 1,
      },
      {
        id: 'parallel-1',
        kind: 'parallel',
        grips: [{ piece: 'run-1/pole-1' }, { piece: 'spoke-1/arm-1' }],
      },
    ],
  }));
}

export function obstacle(course: Course, id: string): Obstacle {
  const found = currentLayout(course).obstacles.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no obstacle ${id}`);
  return found;
}

export function obstacleIds(course: Course): readonly string[] {
  return currentLayout(course).obstacles.map((each) => each.id);
}
